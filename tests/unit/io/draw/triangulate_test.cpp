#include "io/draw/triangulate.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>

namespace bedbow {

namespace {

using Loop = std::vector<Eigen::Vector2d>;

Loop circle(double radius, int n, bool clockwise = false) {
  Loop out;
  for (int i = 0; i < n; ++i) {
    const double t = 2 * std::numbers::pi * (clockwise ? -i : i) / n;
    out.emplace_back(radius * std::cos(t), radius * std::sin(t));
  }
  return out;
}

/// Triangles must fill the outline exactly: areas sum up, all turn left, and there are n - 2 + 2 holes of them.
void expect_filled(const std::vector<Loop>& loops) {
  Loop points;
  double area = 0;
  for (const Loop& l : loops) {
    points.insert(points.end(), l.begin(), l.end());
    area += signed_area(l);
  }
  const auto triangles = triangulate(loops);
  EXPECT_EQ(triangles.size(), points.size() - 2 + 2 * (loops.size() - 1));
  double sum = 0;
  for (const auto& [a, b, c] : triangles) {
    const double part = signed_area({points[a], points[b], points[c]});
    EXPECT_GT(part, 0);
    sum += part;
  }
  EXPECT_NEAR(sum, area, 1e-12 * std::abs(area));
}

TEST(Triangulate, SignedArea) {
  EXPECT_DOUBLE_EQ(signed_area({{0, 0}, {2, 0}, {2, 3}, {0, 3}}), 6);
  EXPECT_DOUBLE_EQ(signed_area({{0, 3}, {2, 3}, {2, 0}, {0, 0}}), -6);
}

TEST(Triangulate, ConvexAndHollowOutlines) {
  expect_filled({{{0, 0}, {2, 0}, {2, 3}, {0, 3}}});
  expect_filled({circle(0.01, 48)});
  expect_filled({{{0, 0}, {50, 0}, {50, 6}, {6, 6}, {6, 50}, {0, 50}}});                     // angle
  expect_filled({{{0, 0}, {40, 0}, {40, 5}, {5, 5}, {5, 75}, {40, 75}, {40, 80}, {0, 80}}}); // channel
}

TEST(Triangulate, PointsWithinStraightEdgesAreUsed) {
  expect_filled({{{0, 0}, {1, 0}, {2, 0}, {2, 1}, {2, 2}, {1, 2}, {0, 2}, {0, 1}}});
  expect_filled({{{0, 0}, {1, 0}, {2, 0}, {0, 2}}});
}

TEST(Triangulate, Holes) {
  expect_filled({{{0, 0}, {4, 0}, {4, 4}, {0, 4}}, {{1, 1}, {1, 3}, {3, 3}, {3, 1}}});
  expect_filled({{{0, 0}, {2, 0}, {4, 0}, {4, 2}, {4, 4}, {2, 4}, {0, 4}, {0, 2}},
                 {{1, 1}, {1, 2}, {1, 3}, {2, 3}, {3, 3}, {3, 2}, {3, 1}, {2, 1}}});
  expect_filled({circle(10, 32), circle(8, 32, true)});
  // Two cells side by side.
  expect_filled({{{0, 0}, {8, 0}, {8, 4}, {0, 4}}, {{1, 1}, {1, 3}, {3, 3}, {3, 1}}, {{5, 1}, {5, 3}, {7, 3}, {7, 1}}});
}

TEST(Triangulate, CrossingOutlineEnds) {
  EXPECT_LE(triangulate({{{0, 0}, {1, 1}, {1, 0}, {0, 1}}}).size(), 2U) << "ends, whatever it draws";
  EXPECT_TRUE(triangulate({}).empty());
}

} // namespace

} // namespace bedbow
