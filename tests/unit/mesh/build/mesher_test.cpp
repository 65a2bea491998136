#include "mesh/build/mesher.h"
#include "mesh/build/stations.h"

#include "tests/unit/mesh/build/plain_machine.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

/// Bed and apron as beams, clamp as a plate, lying.
Machine three_bodies() {
  Machine m = test::plain_bed();
  m.body(BodyKind::clamp).bars = {test::plain_bar("plate", 0.08, 0.01, 0.05, 0.005, 0.05, 0.8)};
  m.body(BodyKind::clamp).bars[0].model = BarModel::plate;
  m.body(BodyKind::apron).bars = {test::plain_bar("face", 0.06, 0.02, -0.03, -0.01)};
  return m;
}

TEST(Mesher, BeamBarsReachFromEndToEnd) {
  const Mesh mesh = make_mesh(three_bodies(), test::plain_shapes());
  const BarLayout& web = mesh.layouts.at(0);
  EXPECT_EQ(web.owner, test::bed_bar);
  EXPECT_EQ(web.nodes.size(), web.stations.size());
  EXPECT_DOUBLE_EQ(web.stations.front(), 0);
  EXPECT_DOUBLE_EQ(web.stations.back(), 0.9);
  for (std::size_t i = 0; i < web.nodes.size(); ++i) {
    const Eigen::Vector3d& x = mesh.nodes[static_cast<std::size_t>(web.nodes[i])].x;
    EXPECT_EQ(x, Eigen::Vector3d(web.stations[i], 0.01, -0.05)) << "on the centroid line";
  }
  double length = 0;
  for (std::size_t i = 0; i + 1 < web.nodes.size(); ++i) {
    const BeamElement& e = mesh.beams[static_cast<std::size_t>(web.first_element) + i];
    EXPECT_EQ(e.nodes, (std::array<int, 2>{web.nodes[i], web.nodes[i + 1]}));
    EXPECT_EQ(e.owner, test::bed_bar);
    length += e.length;
  }
  EXPECT_NEAR(length, 0.9, 1e-12);
}

TEST(Mesher, PlateBarCoversItsFace) {
  const Machine m = three_bodies();
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  const Ref plate{Ref::Kind::bar, BodyKind::clamp, 0};
  const BarLayout& l = mesh.layouts.at(1);
  ASSERT_EQ(l.owner, plate);
  EXPECT_FALSE(l.standing);
  EXPECT_DOUBLE_EQ(l.across.front(), -0.04);
  EXPECT_DOUBLE_EQ(l.across.back(), 0.04);
  EXPECT_EQ(l.nodes.size(), l.across.size() * l.stations.size());
  double area = 0;
  for (const ShellElement& e : mesh.shells) {
    if (!(e.owner == plate)) continue;
    EXPECT_DOUBLE_EQ(e.thickness, 0.01);
    const auto at = [&](std::size_t k) { return mesh.nodes[static_cast<std::size_t>(e.nodes[k])].x; };
    const Eigen::Vector3d normal = (at(2) - at(0)).cross(at(3) - at(1)) / 2;
    EXPECT_GT(normal.z(), 0) << "corners have the same orientation";
    area += normal.norm();
  }
  EXPECT_NEAR(area, 0.8 * 0.08, 1e-12);
}

TEST(Mesher, FramesAndUniqueNodes) {
  const Machine m = three_bodies();
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  for (const BarLayout& l : mesh.layouts)
    for (const int n : l.nodes)
      EXPECT_EQ(mesh.nodes[static_cast<std::size_t>(n)].frame,
                l.owner.body == BodyKind::apron ? Frame::apron : Frame::fixed);
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    for (std::size_t k = 0; k < i; ++k) EXPECT_GT((mesh.nodes[i].x - mesh.nodes[k].x).norm(), 1e-6) << i << ", " << k;
}

TEST(Mesher, BendStationsAreThoseOfTheSheet) {
  Machine m = three_bodies();
  Sheet sheet;
  sheet.centre = 0.45;
  sheet.width = 0.5;
  sheet.thickness = 0.001;
  sheet.material = 0;
  m.sheet = sheet;
  m.nose.bar = 0;
  m.nose.land = 0.015;
  m.body(BodyKind::clamp).edge_bar = 0;
  m.body(BodyKind::apron).edge_bar = 0;
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  ASSERT_GE(mesh.bend_stations.size(), 6U);
  EXPECT_NEAR(mesh.bend_stations.front(), 0.2, 1e-12);
  EXPECT_NEAR(mesh.bend_stations.back(), 0.7, 1e-12);
  double held = 0;
  for (const PadSpot& spot : pad_spots(m, mesh, {0.2, 0.7})) held += spot.sheet ? spot.tributary : 0;
  EXPECT_NEAR(held, 0.5, 1e-12) << "the tributary lengths add up to the whole width";
}

// Two members that end at one point share a node; panels bring their grid.
TEST(Mesher, MembersAndPanels) {
  Machine m = test::plain_bed();
  m.bodies = {};
  for (const BodyKind k : all_bodies) m.body(k).kind = k;
  Member leg;
  leg.name = "leg";
  leg.from = {0, 0, 0};
  leg.to = {0, 0, 0.4};
  leg.shape.width = leg.shape.height = 0.02;
  leg.material = 0;
  leg.divisions = 3;
  Member rail = leg;
  rail.name = "rail";
  rail.from = {0, 0, 0.4};
  rail.to = {0.5, 0, 0.4};
  m.members = {leg, rail};
  Panel panel;
  panel.name = "cheek";
  panel.corner = {0, 1, 0};
  panel.edge_a = {0.4, 0, 0};
  panel.edge_b = {0, 0.3, 0};
  panel.thickness = 0.006;
  panel.material = 0;
  panel.divisions = {4, 3};
  m.panels = {panel};
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  EXPECT_EQ(mesh.beams.size(), 6U);
  EXPECT_EQ(mesh.shells.size(), 12U);
  EXPECT_EQ(mesh.nodes.size(), 4U + 4U - 1U + 5U * 4U);
  EXPECT_EQ(mesh.beams[2].nodes[1], mesh.beams[3].nodes[0]);
  // Local x along the member.
  EXPECT_LT((mesh.beams[0].axes.row(0).transpose() - Eigen::Vector3d::UnitZ()).norm(), 1e-15);
  EXPECT_LT((mesh.beams[4].axes.row(2).transpose() - Eigen::Vector3d::UnitZ()).norm(), 1e-15) << "height along z";
}

} // namespace
} // namespace bedbow
