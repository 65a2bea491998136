#include "io/results/result_tables.h"
#include "solver/findings/results.h"

#include <gtest/gtest.h>

namespace bedbow {

namespace {

BarResult bar(const std::string& name, double stress, double peak) {
  BarResult b;
  b.name = name;
  b.stress = stress;
  b.utilisation = stress / 275e6;
  b.at_x = 0.5;
  b.peak_stress = peak;
  b.peak_x = 0.04;
  return b;
}

} // namespace

// The stress beside a point force grew with every finer mesh until the verdict failed. It is shown as a peak, where it
// is clearly above what is judged, and judged nowhere.
TEST(LocalPeaks, AreListedApartAndNotJudged) {
  Findings f;
  StepResult& s = f.steps.emplace_back();
  s.name = "bend 0 deg";
  s.bars = {bar("bed.top", 100e6, 330e6), bar("bed.web", 100e6, 104e6), bar("bed.foot", 100e6, 100e6)};
  EXPECT_TRUE(judge(Machine{}, f.steps).pass);
  const OutputUnits units;
  const auto words = local_peak_words(f, units);
  ASSERT_EQ(words.size(), 1U);
  EXPECT_EQ(words[0], "bar bed.top: 330.0 MPa at x = 40 mm, bend 0 deg (judged: 100.0 MPa)");
}

} // namespace bedbow
