#include "solver/assembly/displacement_functional.h"

#include "tests/unit/solver/assembly/hand_mesh.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

/// An arbitrary value of each unknown and rigid-body amplitude.
struct Moved {
  Eigen::VectorXd unknowns;
  Vector6d rigid;
};

Moved some_movement(const Substructure& c) {
  Moved m;
  m.unknowns.resize(c.size);
  for (int i = 0; i < c.size; ++i) m.unknowns[i] = std::sin(1.3 * i + 0.4);
  m.rigid << 0.3, -0.7, 0.2, 0.5, 0.1, -0.9;
  return m;
}

/// Total displacement of a node: rigid-body part about the centre plus its unknowns.
Vector6d movement_of(const test::HandMesh& h, const DofMap& map, const Moved& m, int node) {
  const NodeLink& l = map.links[node];
  Vector6d u = m.rigid;
  const Eigen::Vector3d turn = m.rigid.tail<3>();
  u.head<3>() += turn.cross(h.mesh.nodes[l.ref].x - map.substructures[0].centre);
  for (int k = 0; k < 6; ++k)
    if (map.dofs[l.ref][k] >= 0) u[k] += m.unknowns[map.dofs[l.ref][k]];
  const Eigen::Vector3d theta = u.tail<3>();
  u.head<3>() += theta.cross(l.arm);
  return u;
}

double value(const DisplacementFunctional& f, const Moved& m) {
  return evaluate(f, m.unknowns) + f.rigid.dot(m.rigid);
}

test::HandMesh linked_bars() {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  const int other = h.add_bar(BodyKind::bed, {0, 0.4, 1}, 0.03, -0.2);
  h.mesh.rigid_links = {{1, other + 1}, {2, other + 2}};
  return h;
}

TEST(DisplacementFunctional, IsTheDisplacementOfThePlace) {
  const test::HandMesh h = linked_bars();
  const DofMap map = make_dof_map(h.machine, h.mesh);
  ASSERT_EQ(map.substructures.size(), 1U);
  const Moved m = some_movement(map.substructures[0]);
  const Eigen::Vector3d along(0.6, -0.48, 0.64), arm_1(0.02, 0.05, -0.07), arm_2(-0.1, 0, 0.03);
  // Carried by two nodes, both of them on links with arms of their own.
  Place p = h.place(4, arm_1);
  p.terms[0] = PlaceTerm::on_arm(4, 0.3, arm_1);
  p.terms.push_back(PlaceTerm::on_arm(5, 0.7, arm_2));
  const Vector6d u = movement_of(h, map, m, 4), v = movement_of(h, map, m, 5);
  const Eigen::Vector3d turn_u = u.tail<3>(), turn_v = v.tail<3>();
  const Eigen::Vector3d there = 0.3 * (u.head<3>() + turn_u.cross(arm_1)) + 0.7 * (v.head<3>() + turn_v.cross(arm_2));
  EXPECT_NEAR(value(translation_of(h.mesh, map, p, along), m), along.dot(there), 1e-14);
  EXPECT_NEAR(value(rotation_of(h.mesh, map, p, along), m), along.dot(0.3 * turn_u + 0.7 * turn_v), 1e-14);
}

TEST(DisplacementFunctional, GroundDoesNotMove) {
  const test::HandMesh h = linked_bars();
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const DisplacementFunctional f = translation_of(h.mesh, map, Place{}, Eigen::Vector3d::UnitX());
  EXPECT_EQ(f.component, -1);
  EXPECT_TRUE(f.terms.empty());
  EXPECT_TRUE(f.rigid.isZero(0));
}

TEST(DisplacementFunctional, HeldDofsAreOmitted) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  h.clamp(0);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  EXPECT_TRUE(translation_of(h.mesh, map, h.place(0, {0, 0.1, 0.2}), Eigen::Vector3d::UnitX()).terms.empty());
  EXPECT_EQ(translation_of(h.mesh, map, h.place(1), Eigen::Vector3d::UnitX()).terms.size(), 1U);
}

} // namespace
} // namespace bedbow
