#include "mesh/check/polygon.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

Polygon box(double y0, double y1, double z0, double z1) {
  return {{y0, z0}, {y1, z0}, {y1, z1}, {y0, z1}};
}

TEST(Polygon, DepthIsTheDistanceFromTheBoundary) {
  EXPECT_DOUBLE_EQ(depth_inside(box(0, 10, 0, 4), {3, 1}), 1);
  EXPECT_DOUBLE_EQ(depth_inside(box(0, 10, 0, 4), {3, 5}), 0);
  const Polygon angle{{0, 0}, {10, 0}, {10, 1}, {1, 1}, {1, 10}, {0, 10}}; // an L leaves its inside free
  EXPECT_DOUBLE_EQ(depth_inside(angle, {5, 5}), 0);
  EXPECT_DOUBLE_EQ(depth_inside(angle, {0.5, 5}), 0.5);
}

TEST(Polygon, WhatOnlyTouchesDoesNotOverlap) {
  EXPECT_EQ(overlap_of(box(0, 10, 0, 4), box(10, 20, 0, 4)).depth, 0);
  EXPECT_EQ(overlap_of(box(0, 10, 0, 4), box(2, 8, 4, 9)).depth, 0);
  EXPECT_NEAR(overlap_of(box(0, 10, 0, 4), box(9.5, 20, 1, 3)).depth, 0.5, 1e-15);
}

// Two flats that cross have no corner in each other.
TEST(Polygon, CrossingBarsOverlap) {
  const Overlap o = overlap_of(box(-50, 50, -1, 1), box(-1, 1, -50, 50));
  EXPECT_NEAR(o.depth, 1, 1e-12);
  EXPECT_LE(o.at.norm(), std::numbers::sqrt2 + 1e-12);
}

TEST(Polygon, BoxesBoundTheDepth) {
  EXPECT_NEAR(box_overlap(box(0, 10, 0, 4), box(9.5, 20, 1, 3)), 0.5, 1e-15);
  EXPECT_LE(box_overlap(box(0, 10, 0, 4), box(10, 20, 1, 3)), 0);
}

TEST(Polygon, SwingsUpFromTheFront) {
  const Polygon up = swung({{-1, 0}, {0, -2}, {0, 0}}, std::numbers::pi / 2);
  EXPECT_NEAR((up[0] - Eigen::Vector2d(0, 1)).norm(), 0, 1e-15);
  EXPECT_NEAR((up[1] - Eigen::Vector2d(-2, 0)).norm(), 0, 1e-15);
}

TEST(Polygon, RoundedCornerTouchesBothEdges) {
  const Polygon round = rounded_corner(box(0, 10, 0, 10), {0, 0}, 2);
  for (const Eigen::Vector2d& p : round)
    if (p.x() < 2 - 1e-12 && p.y() < 2 - 1e-12) {
      EXPECT_NEAR((p - Eigen::Vector2d(2, 2)).norm(), 2, 1e-12);
    }
  EXPECT_EQ(depth_inside(round, {0.5, 0.5}), 0);
  EXPECT_GT(depth_inside(round, {0.7, 0.7}), 0);
}

} // namespace
} // namespace bedbow
