#include "io/case/case_reader.h"
#include "solver/study/crown.h"

#include "tests/support/as_beams.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

/// As beams, which the search solves in a fifth of the time; what it does with the answers is the same.
Machine hive() {
  return read_case_text(test::as_beams(test::shipped_case("hive-lid")), builtin_registries()).machine;
}

CrownTask task(BodyKind on, CrownAim aim, int places) {
  CrownTask t;
  t.on = on;
  t.aim = aim;
  t.step = 1;
  for (int i = 0; i < places; ++i) t.places.push_back(0.15 + 0.6 * i / (places - 1.0));
  return t;
}

// Shims on the apron turn the flange by height over depth and change nothing else: with a place every 25 mm the angle
// is even but for the curve between the places.
TEST(FindCrown, OfTheApronMakesTheAngleEven) {
  const Machine m = hive();
  CrownTask t = task(BodyKind::apron, CrownAim::even, 25);
  const CrownResult r = find_crown(m, builtin_registries(), t);
  EXPECT_LT(r.exact.spread, 0.05 * r.before.spread);
  EXPECT_NEAR(r.rounded.spread, r.exact.spread, 1e-9); // no stock: the same
  t.stock = {0.02e-3, 0.06e-3};                        // four of them make every multiple of 0.02 mm up to 0.20 mm
  const CrownResult coarse = find_crown(m, builtin_registries(), t);
  // Each place is off by at most half a shim, and so the angle by at most one shim over the flange.
  EXPECT_LT(coarse.rounded.spread, coarse.exact.spread + 0.02e-3 / 0.025);
  for (const ShimPlace& p : coarse.places) {
    EXPECT_GE(p.height, 0);
    if (p.height < 4 * 0.02e-3) {
      EXPECT_LE(std::abs(p.shim - p.height), 0.01e-3 + 1e-12);
    }
  }
}

TEST(FindCrown, OfTheClampStraightensItsLine) {
  const CrownResult r = find_crown(hive(), builtin_registries(), task(BodyKind::clamp, CrownAim::straight, 7));
  EXPECT_LT(r.exact.bow, 0.5 * r.before.bow);
}

// At 90 deg friction takes part of the push off the clamp: shims that suit a sheet that slides don't suit one that is
// held. Each answer is what an analysis of the shimmed machine with that friction says.
TEST(FindCrown, ShimsSuitTheSheetsFriction) {
  double before[2], height[2];
  for (const int held : {0, 1}) {
    Machine m = hive();
    m.sheet->friction = held ? 0.15 : 0;
    CrownTask t = task(BodyKind::apron, CrownAim::even, 5);
    t.step = 3; // 90 deg
    const CrownResult r = find_crown(m, builtin_registries(), t);
    EXPECT_EQ(r.before.spread, analyse(m, builtin_registries()).steps.at(3).bow.angle_spread);
    Crown& crown = m.body(BodyKind::apron).crown;
    for (const ShimPlace& p : r.places) {
      crown.x.push_back(p.x);
      crown.height.push_back(p.shim);
    }
    EXPECT_NEAR(r.rounded.spread, analyse(m, builtin_registries()).steps.at(3).bow.angle_spread, 1e-12);
    before[held] = r.before.spread;
    height[held] = r.places[2].height - (r.places[0].height + r.places[4].height) / 2;
  }
  EXPECT_GT(before[0], 1.02 * before[1]); // 0.212 and 0.202 deg
  EXPECT_GT(std::abs(height[0] - height[1]), 0.02 * std::abs(height[0]));
}

TEST(FindCrown, ShimsAreTheNearestSum) {
  EXPECT_EQ(nearest_shims(0.151e-3, {0.05e-3, 0.1e-3}), (std::vector<double>{0.1e-3, 0.05e-3}));
  EXPECT_TRUE(nearest_shims(0.02e-3, {0.05e-3, 0.1e-3}).empty());
  EXPECT_EQ(nearest_shims(0.2e-3, {0.05e-3, 0.2e-3}).size(), 1U);
}

// A rod can only pull: on one side of the bar it straightens, on the other it would have to push.
TEST(FindRod, BendsTheLineBack) {
  const RodResult r = find_rod(hive(), builtin_registries(), task(BodyKind::apron, CrownAim::straight, 2), -0.06);
  EXPECT_LT(r.after.bow, r.before.bow);
  const RodResult other = find_rod(hive(), builtin_registries(), task(BodyKind::apron, CrownAim::straight, 2), 0.06);
  EXPECT_LT(r.tension * other.tension, 0) << "on the other side the rod would have to push";
}

TEST(FindCrown, RefusesWhatMakesNoSense) {
  Machine m = hive();
  CrownTask t = task(BodyKind::apron, CrownAim::even, 7);
  t.places = {0.5, 0.2};
  EXPECT_THROW(find_crown(m, builtin_registries(), t), std::invalid_argument);
  t = task(BodyKind::apron, CrownAim::even, 7);
  m.body(BodyKind::apron).crown = {{0}, {1e-4}};
  EXPECT_THROW(find_crown(m, builtin_registries(), t), std::invalid_argument);
}

} // namespace
} // namespace bedbow
