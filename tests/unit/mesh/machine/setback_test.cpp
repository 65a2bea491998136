// A nose edge as near to the bend line as set-back allows touches the bend and no more, whatever the angle.
#include "mesh/machine/setback.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace bedbow {
namespace {

constexpr double degree = std::numbers::pi / 180;

TEST(Setback, SharpEdgeStandsWhereTheBendBegins) {
  EXPECT_NEAR(least_setback(1.5e-3, 2e-3, 0, 90 * degree), 3.5e-3, 1e-15);
  // Half of a right angle: both faces' tangents are tan(22.5 deg) = sqrt2 - 1 times as long.
  EXPECT_NEAR(least_setback(1.5e-3, 2e-3, 0, 45 * degree), 3.5e-3 * (std::numbers::sqrt2 - 1), 1e-15);
  EXPECT_NEAR(least_setback(1.5e-3, 2e-3, 0, 0), 0, 1e-15);
}

TEST(Setback, RoundedEdgeMovesForwardByItsRadiusUpToTheFlange) {
  EXPECT_NEAR(least_setback(1.5e-3, 2e-3, 0.5e-3, 90 * degree), 3e-3, 1e-15);
  EXPECT_NEAR(least_setback(1.5e-3, 2e-3, 2e-3, 90 * degree), 1.5e-3, 1e-15);
  EXPECT_NEAR(least_setback(1.5e-3, 2e-3, 6e-3, 90 * degree), 1.5e-3, 1e-15);
}

/// Least clearance between points of a nose edge rounded to R and the inside of the bend, by the circle of the bend and
/// the flange's inner face. Below 0 the edge stands in the sheet.
double clearance(double t, double r, double R, double setback, double angle) {
  const double begins = (t + r) * std::tan(angle / 2); // where base and arc meet; as far along the flange it ends
  const Eigen::Vector2d centre(begins, t + r), out(-std::cos(angle), std::sin(angle)),
      normal(std::sin(angle), std::cos(angle));
  double least = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= 1000; ++i) {
    const double a = angle * i / 1000; // the part of the rounding that faces the bend, from straight down on
    const Eigen::Vector2d p(setback + R - R * std::sin(a), t + R - R * std::cos(a));
    const bool before_arc = p.x() >= begins, beyond_arc = p.dot(out) >= begins;
    const double clear = before_arc && beyond_arc ? std::min(p.y(), p.dot(normal)) - t
                         : before_arc             ? p.y() - t
                         : beyond_arc             ? p.dot(normal) - t
                                                  : r - (p - centre).norm();
    least = std::min(least, clear);
  }
  return least;
}

TEST(Setback, TheEdgeJustTouchesTheBend) {
  for (const double r : {0.0, 1e-3, 2e-3})
    for (const double R : {0.0, 0.4e-3, 2e-3, 5e-3})
      for (const double angle : {20.0, 60.0, 90.0, 120.0, 150.0}) {
        const double least = least_setback(1.5e-3, r, R, angle * degree);
        EXPECT_NEAR(clearance(1.5e-3, r, R, least, angle * degree), 0, 1e-8) << r << ' ' << R << ' ' << angle;
        EXPECT_LT(clearance(1.5e-3, r, R, least - 0.2e-3, angle * degree), -1e-6) << r << ' ' << R << ' ' << angle;
      }
}

Machine folder(double angle) {
  Machine m;
  m.sheet = Sheet{};
  m.sheet->thickness = 1.5e-3;
  m.sheet->inside_radius = 2e-3;
  m.sheet->angle = angle * degree;
  return m;
}

TEST(Setback, OmittedIsThatOfARightAngleOrMore) {
  EXPECT_NEAR(default_setback(folder(90)), 3.5e-3, 1e-15);
  EXPECT_NEAR(default_setback(folder(30)), 3.5e-3, 1e-15);
  EXPECT_NEAR(default_setback(folder(120)), 3.5e-3 * std::numbers::sqrt3, 1e-15);
  Machine m = folder(90);
  m.solve.angles = {0, 120 * degree};
  EXPECT_NEAR(default_setback(m), 3.5e-3 * std::numbers::sqrt3, 1e-15);
  m.nose.radius = 2e-3;
  m.solve.angles = {0, 90 * degree};
  EXPECT_NEAR(default_setback(m), 1.5e-3, 1e-15);
  EXPECT_EQ(default_setback(Machine{}), 0);
}

// 89.5 deg and 1 deg of springback swing past a right angle: that takes the set-back of one, and no more.
TEST(Setback, SpringbackCountsUpToARightAngle) {
  EXPECT_NEAR(required_setback(folder(89.5), 1 * degree), 3.5e-3, 1e-15);
  EXPECT_NEAR(required_setback(folder(90), 5 * degree), 3.5e-3, 1e-15);
  EXPECT_NEAR(required_setback(folder(59), 1 * degree), 3.5e-3 * std::tan(30 * degree), 1e-15);
  EXPECT_NEAR(required_setback(folder(120), 5 * degree), 3.5e-3 * std::numbers::sqrt3, 1e-15);
}

} // namespace
} // namespace bedbow
