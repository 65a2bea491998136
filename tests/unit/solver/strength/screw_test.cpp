#include "solver/strength/screw.h"

#include <gtest/gtest.h>

namespace bedbow {

namespace {
Screw m8() {
  Screw s;
  s.thread = *find_thread("M8");
  s.grade = *find_grade("8.8", 0.008);
  s.plate_thickness = 0.008;
  s.plate = *find_material("S275JR");
  return s;
}
} // namespace

TEST(Screw, BearingByHand) {
  const auto checks = check_screw(m8(), 6400, 0);
  EXPECT_EQ(checks.back().what, "screw bearing");
  EXPECT_NEAR(checks.back().actual, 100e6, 1); // 6.4 kN on 8 x 8 mm
  EXPECT_NEAR(checks.back().allowed.value, 412.5e6, 1);
}

TEST(Screw, ShearAndTensionTogether) {
  const Screw s = m8();
  const double V = shear_resistance(s.thread, s.grade), T = tension_resistance(s.thread, s.grade);
  EXPECT_NEAR(check_screw(s, V, 0).at(2).utilisation(), 1, 1e-12);
  EXPECT_NEAR(check_screw(s, 0, T).at(2).utilisation(), 1 / 1.4, 1e-12);
  EXPECT_NEAR(check_screw(s, 0, T).at(1).utilisation(), 1, 1e-12);
  EXPECT_NEAR(check_screw(s, 0, T / 2, T / 2).at(1).utilisation(), 1, 1e-12); // preload counts
}

TEST(Screw, HighClassesAreLessGoodInShear) {
  const Thread t = *find_thread("M8");
  const double s88 = shear_resistance(t, *find_grade("8.8", 0.008)),
               s109 = shear_resistance(t, *find_grade("10.9", 0.008));
  EXPECT_NEAR(s109 / s88, 0.5 * 1000 / (0.6 * 800), 1e-12);
}

TEST(Screw, TensionNeverAboveProof) {
  const Thread t = *find_thread("M8");
  for (const char* grade : {"4.6", "5.8", "8.8", "10.9", "12.9", "SAE 5", "A574", "A2-70"}) {
    const Grade g = *find_grade(grade, t.d);
    EXPECT_LE(tension_resistance(t, g), proof_load(t, g)) << grade;
  }
}

TEST(Screw, OverridesSayCase) {
  Screw s = m8();
  s.allowed_shear = 1000;
  s.allowed_bearing = 50e6;
  const auto checks = check_screw(s, 500, 0);
  EXPECT_EQ(checks.front().utilisation(), 0.5);
  EXPECT_EQ(checks.front().allowed.source, "case");
  EXPECT_EQ(checks.back().allowed.value, 50e6);
}

TEST(Screw, PryingIsALever) {
  EXPECT_DOUBLE_EQ(prying_tension(1000, 0.030, 0.010), 3000);
  EXPECT_THROW(prying_tension(1, 1, 0), std::invalid_argument);
}

} // namespace bedbow
