#include "mesh/build/mesher.h"
#include "mesh/build/places.h"
#include "mesh/build/strips.h"

#include "tests/unit/mesh/build/plain_machine.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

namespace bedbow {
namespace {

using Vector6 = Eigen::Matrix<double, 6, 1>;

/// The plain bed with its bar as a strip.
Machine strip_bed() {
  Machine m = test::plain_bed();
  m.body(BodyKind::bed).bars.front().model = BarModel::strip;
  return m;
}

/// Displacement of a place in a rigid movement of everything: amplitudes are at rest.
Vector6 moved(const Mesh& mesh, const Place& place, const Eigen::Vector3d& slide, const Eigen::Vector3d& turn) {
  Vector6 out = Vector6::Zero();
  for (const PlaceTerm& t : place.terms) {
    const Node& n = mesh.nodes[static_cast<std::size_t>(t.node)];
    if (!n.moves()) continue;
    Vector6 node;
    node << slide + turn.cross(n.x), turn;
    out += t.movement * node;
  }
  return out;
}

TEST(StripPlaces, FollowRigidMovements) {
  const Machine m = strip_bed();
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  ASSERT_FALSE(mesh.strips.empty());
  const Eigen::Vector3d slide(1, 2, 3), turn(0.1, -0.2, 0.3);
  for (const Eigen::Vector2d& patch : {Eigen::Vector2d(0, 0), Eigen::Vector2d(0.03, 0.02)})
    for (const Eigen::Vector3d& at : {Eigen::Vector3d(0.3, 0.02, 0), {0.3071, -0.01, -0.07}, {0.0, 0.05, 0.2}}) {
      const Place p = place_on_bar(m, mesh, test::bed_bar, at, patch);
      Vector6 should;
      should << slide + turn.cross(at), turn;
      EXPECT_LT((moved(mesh, p, slide, turn) - should).norm(), 1e-12) << at.transpose();
      EXPECT_TRUE(mesh.nodes[static_cast<std::size_t>(p.terms.front().node)].moves()) << "names the part";
    }
}

TEST(StripPlaces, WeightsOfForcesAddUp) {
  const Machine m = strip_bed();
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  double sum = 0;
  for (const PlaceTerm& t : place_on_bar(m, mesh, test::bed_bar, {0.3071, 0.02, 0}, {0.02, 0.02}).terms)
    sum += t.weight;
  EXPECT_NEAR(sum, 1, 1e-14);
}

// A twist w = c x between stations: read exactly, with both its slopes.
TEST(StripPlaces, ReadTheTwistBetweenStations) {
  const Machine m = strip_bed();
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  const BarLayout& l = layout_of(mesh, test::bed_bar);
  const Bar& bar = m.bar(test::bed_bar);
  const StripElement& strip = mesh.strips[static_cast<std::size_t>(l.first_strip)];
  const StripDofs dofs{l.standing, mesh.across[static_cast<std::size_t>(strip.across)].width()};
  const Eigen::Matrix3d axes = FlatAxes{l.standing}.matrix();
  const double x = 0.3071, c = 0.25 * dofs.width, rate = 0.4;
  const Eigen::Vector3d at = Eigen::Vector3d(0, bar.at.x(), bar.at.y()) + axes.transpose() * Eigen::Vector3d(x, c, 0);
  Vector6 out = Vector6::Zero();
  for (const PlaceTerm& t : place_on_bar(m, mesh, test::bed_bar, at).terms) {
    const Node& n = mesh.nodes[static_cast<std::size_t>(t.node)];
    Vector6 node = Vector6::Zero();
    if (n.moves())
      node[dofs.rotation().dof] = rate * n.x.x();
    else if (t.movement.col(StripDofs::twist).norm() > 0 && n.amplitudes == 6)
      node[StripDofs::twist] = rate * dofs.width / 2; // phi_1 is 2 c / b
    out += t.movement * node;
  }
  const Eigen::Vector3d u = axes * out.head<3>(), theta = axes * out.tail<3>();
  EXPECT_NEAR(u.z(), rate * c * x, 1e-12);
  EXPECT_NEAR(theta.x(), rate * x, 1e-12);
  EXPECT_NEAR(theta.y(), -rate * c, 1e-12);
}

TEST(StripPlaces, BarsInThePlaneStayBeams) {
  Machine m = strip_bed();
  m.solve.dimension = 2;
  EXPECT_TRUE(make_mesh(m, test::plain_shapes()).strips.empty());
}

} // namespace
} // namespace bedbow
