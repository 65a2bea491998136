#include "io/case/case_reader.h"
#include "solver/analysis.h"
#include "solver/slip_bounds.h"

#include "tests/support/as_beams.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

constexpr const char* fingers = R"([clamp.fingers]
width = "50 mm"
count = 12
start = "150 mm"
reach = "30 mm"
thickness = "10 mm"
)";

/// The hive-lid folder, whose rows of screws let its bars roll. \param more text behind its case.
Machine hive_lid(const Registries& registries, const std::string& more = "") {
  return read_case_text(test::shipped_case("hive-lid") + "\n" + more, registries).machine;
}

Findings with_bracket(const Machine& machine, const Registries& registries) {
  AnalysisOptions options;
  options.fields = false;
  options.slip_bounds = true;
  return analyse(machine, registries, options);
}

/// The limit against the answer for a machine whose case gives every row 10 GN/mm.
void expect_stiff_screws(Machine machine) {
  const Registries registries = builtin_registries();
  const SlipBoundsSide limit = with_bracket(machine, registries).slip_bounds.value().no_slip_rolling;
  for (Screws& s : machine.screws) s.shear_stiffness = 1e13;
  const Findings stiff = with_bracket(machine, registries);
  ASSERT_EQ(limit.steps.size(), stiff.steps.size());
  for (std::size_t i = 0; i < stiff.steps.size(); ++i)
    for (std::size_t body = 0; body < 3; ++body) {
      const double bow = stiff.steps[i].bow.bow[body];
      EXPECT_NEAR(limit.steps[i].bow.bow[body], bow, 1e-7 + 1e-3 * bow) << stiff.steps[i].name << " body " << body;
    }
}

} // namespace

// What slips is the bars over a pitch and less than a thousandth of it the screw: a thousandth of a bow, which is
// itself a difference of movements that are ten times as large, or a tenth of a micrometre.
TEST(Bracket, NoSlipFreeToRollIsTheAnswerOfVeryStiffScrews) {
  expect_stiff_screws(hive_lid(builtin_registries()));
  expect_stiff_screws(hive_lid(builtin_registries(), fingers));
}

// The bound of built-up-bed, whose screws outnumber its other joints, once said a clamp bow of 0.210 mm and a spread of
// 1.8 deg: with the screws gone, rows of pads took the displacements of other joints. A machine drawn with seams lets
// its flats kink along the seams, the bound along the screws: within the 5 % that strips differ by from plates.
TEST(Bracket, NoSlipIsTheAnswerOfSeamsInPlaceOfTheScrews) {
  const Registries registries = builtin_registries();
  Machine machine = read_case(BEDBOW_SOURCE_DIR "/cases/built-up-bed/case.toml", registries).machine;
  machine.solve.element_size = 0.01; // the seams keep no stations where the screws stood
  const SlipBoundsSide limit = with_bracket(machine, registries).slip_bounds.value().no_slip;
  for (const Screws& s : machine.screws) {
    Weld w;
    static_cast<JointBase&>(w) = s;
    const double half_pitch = (s.x[1] - s.x[0]) / 2;
    w.from = s.x.front() - half_pitch;
    w.to = s.x.back() + half_pitch;
    machine.welds.push_back(w);
  }
  machine.screws.clear();
  const Findings seams = analyse(machine, registries, {.fields = false});
  ASSERT_EQ(limit.steps.size(), seams.steps.size());
  constexpr double within = 0.05;
  for (std::size_t i = 0; i < seams.steps.size(); ++i) {
    const BowResult &is = limit.steps[i].bow, &should = seams.steps[i].bow;
    for (std::size_t body = 0; body < 3; ++body)
      EXPECT_NEAR(is.bow[body], should.bow[body], 1e-7 + within * should.bow[body]) << i << " body " << body;
    if (i > 0) {
      EXPECT_NEAR(is.angle_spread, should.angle_spread, within * should.angle_spread) << i;
    }
  }
}

// Welds also stop the clamp's bars rolling on their single row of screws, which is why a clamp with loose fingers bows
// more at the start of the bend than welded and more than sliding: beside a third limit, that of screws which only
// roll, its bow lies within.
TEST(Bracket, RollingPutsTheFingeredClampInsideItsBracket) {
  const Registries registries = builtin_registries();
  Machine machine = read_case_text(test::as_beams(test::shipped_case("hive-lid") + "\n" + fingers), registries).machine;
  machine.nose.setback = 0; // where this was found, the clamp's front stood in the bend line
  machine.body(BodyKind::clamp).bars.front().at.x() = 0.06;
  machine.sheet->moment_law = "rigid-plastic"; // and the sheet neither hardened nor rubbed
  machine.sheet->friction = 0;
  const Findings f = with_bracket(machine, registries);
  const auto clamp = [](const auto& step) { return step.bow.bow[static_cast<std::size_t>(BodyKind::clamp)]; };
  const double answer = clamp(f.steps[1]);
  EXPECT_GT(answer, clamp(f.slip_bounds->no_slip.steps[1]));
  EXPECT_GT(answer, clamp(f.slip_bounds->no_shear.steps[1]));
  EXPECT_LT(answer, clamp(f.slip_bounds->no_slip_rolling.steps[1]));
}

} // namespace bedbow
