#include "io/case/case_reader.h"
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

// The case's own sheet and the nose at its set-back, 1.5 + 2 mm: what `solve` says then. Hand force: moments about the
// bend line, F a over the width against two hands at 400 mm: 181.865 N x 600 / 400 = 272.8 N together.
TEST(Setup, AgreesWithSolveAndWithMomentsAboutTheBendLine) {
  Machine m = named("hive-lid");
  m.sheet->moment_law = "rigid-plastic";
  const auto s = find_settings(m, builtin_registries(), {1.5e-3}, 0.4);
  m.nose.setback = 3.5e-3;
  const Findings f = analyse(m, builtin_registries());
  EXPECT_NEAR(s[0].apron_angle, m.sheet->angle + f.sheet->springback.sum() - f.steps.back().bow.angle_mean, 1e-12);
  EXPECT_NEAR(s[0].hand_force, 181.865 * 600 / 400 / 2, 0.01 * 136.4);
  EXPECT_TRUE(s[0].within_limits);
  EXPECT_GE(s[0].least_flange, 2e-3 + 3 * 1.5e-3 - 1e-12);
  // The limits hold at the least flange and no longer a tenth below it.
  ASSERT_TRUE(s[0].flange_by_limits);
  m.sheet->flange = s[0].least_flange;
  EXPECT_TRUE(analyse(m, builtin_registries()).verdict.pass);
  m.sheet->flange *= 0.9;
  EXPECT_FALSE(analyse(m, builtin_registries()).verdict.pass);
}

// DC01 1.5 mm over 2 mm, by hand: the power law takes K' t^(n+2)/((n+2) 2^(n+1) rho^n) = 225.6 N mm/mm; the bend
// springs back elastically by it, flange and grip by 4 m l/(E' t^3) each: 0.87, 1.66 and 1.00 deg. `setup` swung by the
// first.
TEST(Setup, SwingsByTheSpringbackOfBendFlangeAndGrip) {
  const Machine m = named("hive-lid");
  const Material& dc01 = m.materials.at(static_cast<std::size_t>(m.sheet->material));
  const double K = *dc01.K * 1e-6, n = *dc01.n, E = 210e3 / 0.91, t = 1.5, rho = 2.75;
  const double moment =
      K * std::pow(2 / std::sqrt(3.0), n + 1) * std::pow(t, n + 2) / ((n + 2) * std::pow(2, n + 1) * std::pow(rho, n));
  const double kept = 1 - 12 * moment * rho / (E * t * t * t);
  const double by_hand = std::numbers::pi / 2 * (1 / kept - 1) + 4 * moment * (25 + 15) / (E * t * t * t);
  const auto s = find_settings(m, builtin_registries(), {1.5e-3}, 0.4);
  EXPECT_NEAR(s[0].springback, by_hand, 1e-9);
  EXPECT_NEAR(s[0].apron_angle - m.sheet->angle - s[0].lag, by_hand, 1e-9);
}

// The flange of built-up-bed springs back by 5 deg and would meet its high clamp on the way: the nose stands 3 mm
// further back than thickness and inside radius, and `setup` solved it at 2.5 mm, with a push of 98.0/(30 + 2.5) N/mm
// at 0 deg.
TEST(Setup, KeepsANoseThatStandsFurtherBack) {
  const Machine m = named("built-up-bed");
  const auto s = find_settings(m, builtin_registries(), {1e-3, 1.2e-3}, 0.4);
  const Findings f = analyse(m, builtin_registries());
  EXPECT_NEAR(s[0].setback, 5.5e-3, 1e-12);
  EXPECT_NEAR(s[1].setback, 1.2e-3 + 2e-3 + 3e-3, 1e-12); // DIN 6935: 1.2 mm of DC01 wants a radius of 2 mm
  EXPECT_NEAR(s[0].apron_angle, m.sheet->angle + f.sheet->springback.sum() - f.steps.back().bow.angle_mean, 1e-12);
}

// The machine's deflection is that with the sheet's friction: with none it is the bound of a sheet that slides freely.
TEST(Setup, DeflectionIsThatOfTheSheetsFriction) {
  Machine m = named("hive-lid");
  AnalysisOptions bounds;
  bounds.slip_bounds = true;
  const Findings f = analyse(m, builtin_registries(), bounds);
  ASSERT_TRUE(f.friction_bounds);
  const double held = find_settings(m, builtin_registries(), {1.5e-3}, 0.4)[0].lag;
  EXPECT_NEAR(held, -f.steps.back().bow.angle_mean, 1e-12);
  m.sheet->friction = 0;
  const double slides = find_settings(m, builtin_registries(), {1.5e-3}, 0.4)[0].lag;
  EXPECT_NEAR(slides, -f.friction_bounds->sliding.steps.back().bow.angle_mean, 1e-9);
  EXPECT_GT(slides, 1.2 * held);
}

// Nuts of the roof-flashing folder, M16 with a pitch of 2 mm, 4 kN on 90 mm: the stud stretches by
// 4000/205000 (90/156.67 + 2 (6.4/201.06 + 8/144.12)) = 0.014617 mm (I5, VDI 2230), 2.631 deg; on top what the clamp
// comes down by, which has no cams here.
TEST(Setup, NutsStretchTheStudAndBringTheClampDown) {
  Machine m = named("roof-flashing");
  const auto s = find_settings(m, builtin_registries(), {0.6e-3}, 0.4);
  m.sheet->inside_radius = s[0].inside_radius;
  m.nose.setback = s[0].setback;
  const Findings f = analyse(m, builtin_registries());
  ASSERT_EQ(s[0].nuts.size(), 2U);
  EXPECT_NEAR(s[0].nuts[0].stretch, 0.014617e-3, 1e-8);
  EXPECT_NEAR(s[0].nuts[0].down, -joints_of(f.steps[0], JointKind::post)[0].figure("apart"), 1e-10);
  EXPECT_NEAR(s[0].nuts[0].turn, (0.014617e-3 + s[0].nuts[0].down) * 2 * std::numbers::pi / 2e-3, 1e-4);
  EXPECT_TRUE(find_settings(named("rocking-clamp"), builtin_registries(), {1.5e-3}, 0.4)[0].nuts.empty());
}

// A thicker sheet is touched earlier and clamped earlier; lift above touching stays.
TEST(Setup, CamAngleKeepsTheLift) {
  const Machine m = named("rocking-clamp");
  EXPECT_NEAR(cam_angle_for(m, 0), *m.cams[0].angle, 1e-9);
  const double thicker = cam_angle_for(m, 0.5e-3);
  EXPECT_LT(thicker, *m.cams[0].angle);
  const double opening = (70 - 11) / (112 - 70.0);
  EXPECT_NEAR(cam_lift(1.5e-3, *m.cams[0].angle) - cam_lift(1.5e-3, thicker), 0.5e-3 / opening, 1e-9);
  EXPECT_TRUE(std::isnan(cam_angle_for(m, 20e-3)));
}

} // namespace
} // namespace bedbow
