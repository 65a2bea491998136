#include "io/draw/surface.h"

#include "tests/unit/support/findings_fixture.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>
#include <map>

namespace bedbow {

namespace {

std::vector<int> corners(const SurfaceCell& c) {
  return c[3] < 0 ? std::vector<int>{c[0], c[1], c[2]} : std::vector<int>{c[0], c[1], c[2], c[3]};
}

/// A closed surface that looks outwards meets each edge once in either direction, and holds a positive volume.
void expect_closed(const Surface& s, double volume) {
  std::map<std::pair<int, int>, int> edges;
  double six_volumes = 0;
  for (const SurfaceCell& cell : s.cells) {
    const std::vector<int> c = corners(cell);
    for (std::size_t i = 0; i < c.size(); ++i) ++edges[{c[i], c[(i + 1) % c.size()]}];
    for (std::size_t i = 2; i < c.size(); ++i)
      six_volumes += s.points[c[0]].at.dot(s.points[c[i - 1]].at.cross(s.points[c[i]].at));
  }
  for (const auto& [edge, times] : edges) {
    EXPECT_EQ(times, 1);
    EXPECT_TRUE(edges.contains({edge.second, edge.first}));
  }
  EXPECT_NEAR(six_volumes / 6, volume, 1e-9 * volume);
}

Surface of_bar(const BarField& bar) {
  Surface s;
  add_bar(s, bar);
  return s;
}

TEST(Surface, BarsAreClosedAndHoldTheirVolume) {
  for (const Section& section :
       {test::rectangle_section(0.03, 0.08), test::tube_section(0.05, 0.004), test::angle_section(0.05, 0.006)}) {
    const double area = section.props.A;
    expect_closed(of_bar(test::bar_field("b", BodyKind::bed, section, 0, 0.9, 0.01, -0.02)), area * 0.9);
  }
}

TEST(Surface, PlatesAreClosedBoxes) {
  Surface s;
  add_shell(s, test::shell_field("cheek", 0.3));
  expect_closed(s, 0.2 * 0.1 * 0.01);
  // Either way round of the quads.
  ShellField turned = test::shell_field("cheek", 0.3);
  for (auto& q : turned.quads) std::swap(q[1], q[3]);
  Surface t;
  add_shell(t, turned);
  expect_closed(t, 0.2 * 0.1 * 0.01);
}

TEST(Surface, PointsMoveWithTheirSection) {
  const Surface s =
      of_bar(test::bar_field("b", BodyKind::bed, test::rectangle_section(0.03, 0.08), 0, 0.9, 0.015, 0.04));
  for (const SurfacePoint& p : s.points) {
    // u + theta x r with theta = 0.01 about x: (0, -0.01 r_z, 0.01 r_y) on top of 1 mm down.
    EXPECT_NEAR(p.displacement.y(), -0.01 * (p.at.z() - 0.04), 1e-15);
    EXPECT_NEAR(p.displacement.z(), -0.001 + 0.01 * (p.at.y() - 0.015), 1e-15);
    EXPECT_EQ(p.rotation, Eigen::Vector3d(0.01, 0, 0));
  }
}

TEST(Surface, BarStressIsThatOfBeamTheory) {
  const Surface s = of_bar(test::bar_field("b", BodyKind::bed, test::rectangle_section(0.03, 0.08), 0, 0.9, 0, 0));
  for (const SurfacePoint& p : s.points) {
    const double sigma = 1000 / (0.03 * 0.08) + 100 * p.at.z() / (0.03 * std::pow(0.08, 3) / 12);
    EXPECT_NEAR(p.von_mises, std::abs(sigma), 1e-3);
    EXPECT_NEAR(p.principal_1, std::max(sigma, 0.0), 1e-3);
    EXPECT_NEAR(p.utilisation, p.von_mises / 275e6, 1e-12);
  }
}

TEST(Surface, AStationWhereForcesJumpShowsTheGreater) {
  BarField bar = test::bar_field("b", BodyKind::bed, test::rectangle_section(0.03, 0.08), 0, 0.9, 0, 0, 2);
  bar.forces[0][1].N = -50000;
  EXPECT_GT(of_bar(bar).points[0].von_mises, 49000 / (0.03 * 0.08) - 3.2e6);
}

TEST(Surface, TurnedBarsStandWhereTheirAxesSay) {
  BarField rod = test::bar_field("rod", BodyKind::bed, test::rectangle_section(0.02, 0.04), 0, 0.9, 0, 0, 2);
  rod.points = {{0, 0, 0}, {0, 0, 0.5}}; // upright
  rod.axes << 0, 0, 1, 1, 0, 0, 0, 1, 0; // local x up, width along x, height along y
  const Surface s = of_bar(rod);
  expect_closed(s, 0.02 * 0.04 * 0.5);
  for (const SurfacePoint& p : s.points) {
    EXPECT_LE(std::abs(p.at.x()), 0.01 + 1e-12);
    EXPECT_LE(std::abs(p.at.y()), 0.02 + 1e-12);
  }
}

TEST(Surface, PlateSidesShowTheirOwnStress) {
  Surface s;
  add_shell(s, test::shell_field("cheek", 0.3));
  for (const SurfacePoint& p : s.points) {
    const bool top = p.at.z() > 0.3;
    EXPECT_EQ(p.von_mises, top ? 30e6 : 20e6);
    EXPECT_EQ(p.von_mises_middle, 10e6);
    EXPECT_EQ(p.principal_2, top ? 0 : -1e6);
    EXPECT_EQ(p.displacement.z(), 0.002);
  }
}

TEST(Surface, PartsTellWhatIsWhat) {
  const Surface s = surface_of(test::findings().steps[0].fields);
  ASSERT_EQ(s.parts.size(), 4U);
  EXPECT_EQ(s.parts[1].name, "bed.web");
  EXPECT_EQ(s.parts[1].body, "bed");
  EXPECT_EQ(s.parts[3].name, "cheek");
  int cells = 0, points = 0;
  for (const SurfacePart& p : s.parts) {
    EXPECT_EQ(p.first_cell, cells);
    EXPECT_EQ(p.first_point, points);
    cells += p.cells;
    points += p.points;
  }
  EXPECT_EQ(cells, static_cast<int>(s.cells.size()));
  EXPECT_EQ(points, static_cast<int>(s.points.size()));
}

TEST(Surface, NothingToDraw) {
  EXPECT_TRUE(surface_of(Fields{}).cells.empty());
  BarField bare;
  EXPECT_TRUE(of_bar(bare).cells.empty());
}

} // namespace

} // namespace bedbow
