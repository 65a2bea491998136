#include "io/case/case_reader.h"
#include "solver/study/rocking.h"

#include "tests/support/as_beams.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

constexpr double degree = std::numbers::pi / 180;

/// As beams: the nose of strips that turns presses with the rear of its land, which is another lever.
Machine rocking() {
  return read_case_text(test::as_beams(test::shipped_case("rocking-clamp")), builtin_registries()).machine;
}

// Statics of a lever: nose at 10, posts at 60, cams at 130 mm. The cams lift the tail by L about the nose, so the post
// stretches L (60 - 10)/(130 - 10); moments about the cams and about the nose share its tension.
TEST(RigidClamp, IsALever) {
  using enum ClampSpring::Kind;
  const double L = 0.5e-3, k = 4e7;
  const auto s = solve_rigid_clamp({{post, 0, 0.06, k, 0},
                                    {post, 1, 0.06, k, 0},
                                    {cam, 0, 0.13, 1e14, L},
                                    {cam, 1, 0.13, 1e14, L},
                                    {nose, 0, 0.01, 1e14, 0},
                                    {nose, 1, 0.01, 1e14, 0}});
  const double P = k * L * 50 / 120;
  EXPECT_NEAR(s[0].force, P, 1e-5 * P);
  EXPECT_NEAR(s[2].force, P * 50 / 120, 1e-5 * P);
  EXPECT_NEAR(s[4].force, P * 70 / 120, 1e-5 * P);
}

// Without lift a post that is not stretched holds nothing, and a post preloaded by N pulls with N on rigid ground.
TEST(RigidClamp, PreloadIsSlackTakenUp) {
  using enum ClampSpring::Kind;
  const auto s = solve_rigid_clamp({{post, 0, 0.06, 4e7, -5000 / 4e7},
                                    {post, 1, 0.06, 4e7, -5000 / 4e7},
                                    {cam, 0, 0.13, 1e14, 0},
                                    {cam, 1, 0.13, 1e14, 0},
                                    {nose, 0, 0.01, 1e14, 0},
                                    {nose, 1, 0.01, 1e14, 0}});
  EXPECT_NEAR(s[0].force, 5000, 0.1);
  EXPECT_NEAR(s[4].force, 5000 * 70.0 / 120, 0.1);
}

// Virtual work: without friction the hand gives what the tail takes, M = F d(lift)/d(angle).
TEST(Cam, MomentIsTheWorkOfTheLift) {
  Cam c;
  c.throw_ = 3e-3;
  c.friction = 0;
  for (const double a : {20 * degree, 70 * degree, 120 * degree, 170 * degree}) {
    const double h = 1e-6;
    const double slope = (cam_lift(3e-3, a + h) - cam_lift(3e-3, a - h)) / (2 * h);
    EXPECT_NEAR(cam_moment(c, a, 8000), 8000 * slope, 1e-5);
    EXPECT_NEAR(cam_moment(c, a, 8000, true), 8000 * slope, 1e-5);
  }
  EXPECT_NEAR(cam_lift(3e-3, std::numbers::pi), 3e-3, 1e-15); // throw is highest less lowest
  EXPECT_NEAR(cam_lift(3e-3, 60 * degree, 60 * degree), 0, 1e-15);
}

// On the top of its stroke (angle 180 deg) nothing turns it back, and the hand works against friction alone:
// 0.15 x 8 kN x (R + e + r) = 1200 N x (15 + 1.5 + 6) mm = 27 N m.
TEST(Cam, FrictionAtTheTop) {
  Cam c;
  c.throw_ = 3e-3;
  c.radius = 15e-3;
  c.shaft = 12e-3;
  EXPECT_NEAR(cam_moment(c, std::numbers::pi, 8000), 27, 1e-9);
  EXPECT_EQ(cam_moment(c, std::numbers::pi, 8000, true), 0);
}

// A machine of very stiff bars is the rigid lever: two ways to the same force.
TEST(Rocking, StiffBarsComeToTheRigidLever) {
  Machine m = rocking();
  for (Material& mat : m.materials)
    if (mat.name == "S275JR") {
      mat.E *= 1e4;
      mat.G *= 1e4;
    }
  for (Screws& s : m.screws) s.shear_stiffness = 1e13;
  const RockResult r = rock(m, builtin_registries(), 1, {2 * degree});
  const RockPoint& shut = r.turn.back();
  EXPECT_NEAR(shut.nose_force, shut.rigid_force, 0.01 * shut.rigid_force);
  ASSERT_EQ(r.lags.size(), 1U);
  // With a lag so stiff a clamp is one plate, not two levers: it tips onto the trailing end.
  Cam& right = m.cams.back();
  right.lift = cam_lift(*right.throw_, *right.angle - 2 * degree, right.touch);
  double on_left = 0, on_right = 0;
  for (const ClampSpring& s : solve_rigid_clamp(clamp_springs(m)))
    if (s.kind == ClampSpring::Kind::nose) (s.x < m.sheet->centre ? on_left : on_right) += s.force;
  EXPECT_NEAR(r.lags[0].left, on_left, 0.02 * shut.rigid_force);
  EXPECT_NEAR(r.lags[0].right, on_right, 0.02 * shut.rigid_force);
}

TEST(Rocking, BendingBarsPressLessAndALagTakesFromItsSide) {
  const Machine m = rocking();
  const RockResult r = rock(m, builtin_registries(), 6, {0, 2 * degree, 5 * degree});
  const RockPoint& low = r.turn.front();
  const RockPoint& shut = r.turn.back();
  // Lowest: the nose stands open by what the tail has sunk below its touch, through the lever.
  const Cam& c = m.cams.front();
  EXPECT_NEAR(low.opening, *c.throw_ / 2 * (1 - std::cos(c.touch)) * r.lever.opening(), 1e-12);
  EXPECT_LT(shut.nose_force, shut.rigid_force);
  EXPECT_GT(shut.nose_force, 0);
  // Moments about the posts, all at one y: nose and cams balance, wherever the bars bend to.
  EXPECT_NEAR(shut.nose_force, shut.cam_force * r.lever.ratio(), 0.03 * shut.nose_force);
  EXPECT_NEAR(shut.shift, *c.throw_ / 2 * std::sin(*c.angle), 1e-12);
  EXPECT_NEAR(r.lags[0].left, r.lags[0].right, 1e-6 * r.lags[0].left);
  EXPECT_LT(r.lags[1].right, r.lags[1].left);
  EXPECT_LT(r.lags[2].right, r.lags[1].right);
}

TEST(Rocking, PostsBehindTheCamsAreRefused) {
  Machine m = rocking();
  for (Cam& c : m.cams) c.at.y() = 0.02;
  EXPECT_THROW(clamp_lever(m), std::invalid_argument);
  m.cams.clear();
  EXPECT_THROW(clamp_lever(m), std::invalid_argument);
}

} // namespace
} // namespace bedbow
