// The rocking clamp case by paper and pencil: lever, lift, hand moment, set-back shift and lag.
#include "mesh/piece/fastener.h"
#include "mesh/piece/si.h"
#include "solver/study/rocking.h"

#include "tests/support/as_beams.h"
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {

namespace {

using si::degree;
constexpr const char* statics = "statics of a lever, worked in the test";
constexpr const char* eccentric = "eccentric: lift by geometry, moment by virtual work, friction by Coulomb";

// Sizes of cases/rocking-clamp in mm and N: y of the nose's pressure (in the middle of a land of 15: its bars as
// beams), of posts and cams.
constexpr double nose = 3.5 + 7.5, posts = 70, cams = 112, e = 0.75;

double lift(double angle) {
  return e * (std::cos(124 * degree) - std::cos(angle * degree));
}

RockResult rocked() {
  return rock(machine_of(test::as_beams(project_file("cases/rocking-clamp/case.toml"))), builtin_registries(), 6,
              {0, 1 * degree, 2 * degree, 5 * degree});
}

} // namespace

TEST(LeverStatics, OpeningAndClampForce) {
  const RockResult r = rocked();
  record("", statics, "nose force over cam force", r.lever.ratio(), (cams - posts) / (posts - nose), 1e-12);
  record("", statics, "the nose opens, cams lowest", r.turn.front().opening * 1e3,
         -lift(0) * (posts - nose) / (cams - posts), 1e-12, "mm");
  // Rigid bars: the post stretches by the lift through the lever and shares its pull out by moments. The sheet's pad
  // gives by a few parts in ten thousand.
  // M20: 244.8 mm^2 over the free length, and at either nut 0.4 d of the shank and 0.5 d of the core, 16.933 mm (VDI
  // 2230).
  const double shank = std::numbers::pi / 4 * 20 * 20, core = std::numbers::pi / 4 * 16.933 * 16.933;
  const double stud = 205e3 / (120 / (stress_area(*find_thread("M20")) * 1e6) + 2 * (8 / shank + 10 / core));
  const RockPoint& shut = r.turn.back();
  const double pull = 4 * stud * lift(140) * (posts - nose) / (cams - nose);
  record("I5", statics, "nose force of rigid bars", shut.rigid_force, pull * (cams - posts) / (cams - nose), 5e-4, "N");
  // Moments about the line of the posts, whatever bends.
  record("", statics, "flexible clamp: nose force, from its cam force", shut.nose_force,
         shut.cam_force * (cams - posts) / (posts - nose), 1e-3, "N");
}

TEST(LeverStatics, HandMomentAndSetBack) {
  const RockPoint shut = rocked().turn.back();
  const double a = 140 * degree, F = shut.cam_force, mu = 0.12, R = 30, shaft = 12.5;
  record("", eccentric, "lift at 140 deg", shut.lift * 1e3, lift(140), 1e-12, "mm");
  record("", eccentric, "moment to turn", shut.moment, F * (e * std::sin(a) + mu * (R - e * std::cos(a) + shaft)) / 1e3,
         1e-12, "N m");
  record("", eccentric, "hand force at 400 mm", shut.hand, shut.moment / 0.4, 1e-12, "N");
  record("", eccentric, "moment back, held by friction", shut.back_moment, 0, 0, "N m");
  record("", eccentric, "set-back shift", shut.shift * 1e3, e * std::sin(a), 1e-12, "mm");
}

TEST(LeverStatics, LagOnOneSide) {
  const RockResult r = rocked();
  for (std::size_t i = 1; i < r.lags.size(); ++i) {
    const RockLag& l = r.lags[i];
    const double lag = l.lag / degree;
    const std::string of = ", lag " + std::to_string(std::lround(lag)) + " deg";
    record("", statics, "rigid levers: right over left" + of, l.rigid_right / l.rigid_left, lift(140 - lag) / lift(140),
           1e-9);
    // The clamp's torsion and the bed, which joins both sides, pass a little across: the sides differ less.
    EXPECT_GE(l.right / l.left, lift(140 - lag) / lift(140)) << of;
    EXPECT_LE(l.right / l.left, (1 + lift(140 - lag) / lift(140)) / 2) << of;
    record("", eccentric, "skew" + of, l.skew * 1e3, e * (std::sin((140 - lag) * degree) - std::sin(140 * degree)),
           1e-9, "mm");
  }
}

// Preloaded posts pull with just their preload: 4 x 15 kN at 70 mm share out between nose and cams by moments.
TEST(LeverStatics, PreloadedPosts) {
  const RockPoint shut =
      rock(machine_of(test::as_beams(project_file("cases/hive-lid/case.toml"))), builtin_registries(), 1, {})
          .turn.back();
  const double share = 4 * 15000 * (cams - posts) / (cams - nose);
  record("", statics, "four posts of 15 kN: nose force of rigid bars", shut.rigid_force, share, 1e-6, "N");
  record("", statics, "four posts of 15 kN: nose force, flexible", shut.nose_force, share, 1e-3, "N");
}

} // namespace bedbow::verification
