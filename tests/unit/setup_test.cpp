#include "io/case_reader.h"
#include "solver/study/setup.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

Machine named(const char* name) {
  return read_case(std::string(BEDBOW_SOURCE_DIR "/cases/") + name + "/case.toml", builtin_registries()).machine;
}

// DIN 6935: r = 2, s = 2 at 90 deg: k = 0.65, v = pi/2 (2 + 0.65) - 8 = -3.8374 mm; least radius of DC01 (410 MPa) up
// to 2.5 mm is 3 mm, so r = 3 is taken at 2 mm: v = -4.1283 (references: r = 3, s = 2).
TEST(Setup, BendsByDin6935) {
  const auto s = find_settings(named("hive-lid"), builtin_registries(), {1.5e-3, 2e-3}, 0.4);
  ASSERT_EQ(s.size(), 2U);
  EXPECT_NEAR(s[1].inside_radius, 3e-3, 1e-12);
  EXPECT_NEAR(s[1].correction, -4.1283e-3, 1e-7);
  EXPECT_NEAR(s[1].setback, 5e-3, 1e-12);
  EXPECT_NEAR(s[1].nut_turns, 0.5 / 2.5, 1e-12); // M20 has a pitch of 2.5 mm
  EXPECT_NEAR(s[0].nut_turns, 0, 1e-12);
  EXPECT_TRUE(std::isnan(s[0].cam_angle)); // cams by lift
}

// The case's own sheet: what `solve` says. Hand force: moments about the bend line, F a over the width against two
// hands at 400 mm: 181.865 N x 600 / 400 = 272.8 N together.
TEST(Setup, AgreesWithSolveAndWithMomentsAboutTheBendLine) {
  const Machine m = named("hive-lid");
  const auto s = find_settings(m, builtin_registries(), {1.5e-3}, 0.4);
  const Findings f = analyse(m, builtin_registries());
  EXPECT_NEAR(s[0].apron_angle, m.sheet->angle + f.sheet->springback - f.steps.back().bow.angle_mean, 1e-12);
  EXPECT_NEAR(s[0].hand_force, 181.865 * 600 / 400 / 2, 0.01 * 136.4);
  EXPECT_TRUE(s[0].within_limits);
  EXPECT_GE(s[0].least_flange, 2e-3 + 3 * 1.5e-3 - 1e-12);
}

// A thicker sheet is touched earlier and clamped earlier; lift above touching stays.
TEST(Setup, CamAngleKeepsTheLift) {
  const Machine m = named("rocking-clamp");
  EXPECT_NEAR(cam_angle_for(m, 0), *m.cams[0].angle, 1e-9);
  const double thicker = cam_angle_for(m, 0.5e-3);
  EXPECT_LT(thicker, *m.cams[0].angle);
  const double opening = (70 - 7.5) / (112 - 70.0);
  EXPECT_NEAR(cam_lift(1.5e-3, *m.cams[0].angle) - cam_lift(1.5e-3, thicker), 0.5e-3 / opening, 1e-9);
  EXPECT_TRUE(std::isnan(cam_angle_for(m, 20e-3)));
}

} // namespace
} // namespace bedbow
