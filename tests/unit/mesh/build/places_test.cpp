#include "mesh/build/mesher.h"
#include "mesh/build/places.h"

#include "tests/unit/mesh/build/plain_machine.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

/// A rigid-body displacement, linear in position: any place must reproduce it exactly.
const Eigen::Vector3d slide(0.3, -0.2, 0.5), turn(0.4, 0.7, -0.6);

Eigen::Vector3d moved(const Eigen::Vector3d& at) {
  return slide + turn.cross(at);
}

void expect_exact(const Mesh& mesh, const Place& p, const Eigen::Vector3d& at) {
  Eigen::Vector3d u = Eigen::Vector3d::Zero();
  double weight = 0;
  for (const PlaceTerm& t : p.terms) {
    Eigen::Matrix<double, 6, 1> node;
    node << moved(mesh.nodes[static_cast<std::size_t>(t.node)].x), turn;
    u += t.movement.topRows<3>() * node;
    weight += t.weight;
    EXPECT_GE(t.weight, 0);
  }
  EXPECT_NEAR(weight, 1, 1e-14);
  EXPECT_LT((u - moved(at)).norm(), 1e-14);
  EXPECT_LT((p.at - at).norm(), 1e-15);
}

/// Position by the weights alone: a field that is linear over the nodes is interpolated there.
Eigen::Vector3d weighted(const Mesh& mesh, const Place& p) {
  Eigen::Vector3d x = Eigen::Vector3d::Zero();
  for (const PlaceTerm& t : p.terms) x += t.weight * mesh.nodes[static_cast<std::size_t>(t.node)].x;
  return x;
}

TEST(Places, OnABeamBar) {
  const Machine m = test::plain_bed();
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  const Place on_a_station = place_on_bar(m, mesh, test::bed_bar, {0.3, 0.02, 0});
  EXPECT_EQ(on_a_station.terms.size(), 1U);
  EXPECT_NEAR((on_a_station.terms[0].lever() - Eigen::Vector3d(0, 0.01, 0.05)).norm(), 0, 1e-12);
  expect_exact(mesh, on_a_station, {0.3, 0.02, 0});
  const Place between = place_on_bar(m, mesh, test::bed_bar, {0.325, 0.02, -0.2});
  EXPECT_EQ(between.terms.size(), 2U);
  EXPECT_NEAR(between.terms[1].weight, 0.25, 1e-12);
  EXPECT_NEAR(weighted(mesh, between).x(), 0.325, 1e-14);
  expect_exact(mesh, between, {0.325, 0.02, -0.2});
  EXPECT_EQ(main_node(between), between.terms[0].node) << "the nearer one";
  EXPECT_THROW(place_on_bar(m, mesh, test::bed_bar, {0.901, 0, 0}), std::invalid_argument);
}

TEST(Places, OnAPlateBar) {
  for (const bool standing : {false, true}) {
    Machine m = test::plain_bed();
    m.body(BodyKind::bed).bars = {standing ? test::plain_bar("strip", 0.01, 0.2, 0.1, -0.1)
                                           : test::plain_bar("strip", 0.2, 0.01, 0.1, -0.1)};
    m.body(BodyKind::bed).bars[0].model = BarModel::plate;
    const Mesh mesh = make_mesh(m, test::plain_shapes());
    const Eigen::Vector3d at = standing ? Eigen::Vector3d(0.325, 0.105, -0.13) : Eigen::Vector3d(0.325, 0.13, -0.095);
    const Place p = place_on_bar(m, mesh, test::bed_bar, at);
    EXPECT_EQ(p.terms.size(), 4U);
    expect_exact(mesh, p, at);
    // On the mid-plane, right below or beside the place.
    const Eigen::Vector3d foot = standing ? Eigen::Vector3d(0.325, 0.1, -0.13) : Eigen::Vector3d(0.325, 0.13, -0.1);
    EXPECT_LT((weighted(mesh, p) - foot).norm(), 1e-14);
  }
}

TEST(Places, OnAPanelBetweenItsNodes) {
  Machine m = test::plain_bed();
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
  const Ref cheek{Ref::Kind::panel, BodyKind::bed, 0};
  const Eigen::Vector3d at(0.13, 1.17, 0);
  const auto p = place_between_nodes(m, mesh, cheek, at);
  ASSERT_TRUE(p);
  EXPECT_EQ(p->terms.size(), 4U);
  expect_exact(mesh, *p, at);
  EXPECT_LT((weighted(mesh, *p) - at).norm(), 1e-14);
  EXPECT_FALSE(place_between_nodes(m, mesh, cheek, {0.13, 1.17, 0.001})) << "off its plane";
  EXPECT_FALSE(place_between_nodes(m, mesh, cheek, {0.41, 1.17, 0})) << "off its rectangle";
  const Place nearest = place_on_structure(mesh, cheek, {0.13, 1.17, 0.05});
  EXPECT_EQ(nearest.terms.size(), 4U) << "by the cell below it";
  expect_exact(mesh, nearest, {0.13, 1.17, 0.05});
}

// Two bars, one above the other: omitted coordinates follow from where their boxes meet or face each other.
TEST(Places, OmittedCoordinates) {
  Machine m = test::plain_bed();
  m.body(BodyKind::clamp).bars = {test::plain_bar("flat", 0.06, 0.04, 0.04, 0.03, 0.1, 0.5)};
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  const Ref clamp_bar{Ref::Kind::bar, BodyKind::clamp, 0};
  const GivenPoint nothing = GivenPoint::Constant(left_out);
  const Eigen::Vector3d both = complete_place(m, mesh, {test::bed_bar, clamp_bar}, nothing);
  EXPECT_NEAR(both.x(), 0.35, 1e-15) << "the middle of the common length, 0.1 to 0.6";
  EXPECT_NEAR(both.y(), 0.015, 1e-15) << "overlap: 10 to 20 mm";
  EXPECT_NEAR(both.z(), 0.005, 1e-15) << "gap: 0 to 10 mm";
  const Eigen::Vector3d ground = complete_place(m, mesh, {test::bed_bar, {Ref::Kind::ground}}, {0.2, left_out, 0.7});
  EXPECT_LT((ground - Eigen::Vector3d(0.2, 0.01, 0.7)).norm(), 1e-15)
      << "y at the centroid; given coordinates are kept";
}

} // namespace
} // namespace bedbow
