#include "solver/assembly/dof_map.h"

#include "tests/unit/solver/assembly/hand_mesh.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <set>

namespace bedbow {
namespace {

/// Whether the unknowns of a component are 0 .. size - 1, each once.
bool numbers_all(const DofMap& map, const Substructure& c) {
  std::set<int> seen;
  for (const int n : c.nodes)
    for (const int d : map.dofs[n])
      if (d >= 0 && !seen.insert(d).second) return false;
  return static_cast<int>(seen.size()) == c.size && (seen.empty() || *seen.rbegin() == c.size - 1);
}

TEST(DofMap, FreeBarHasSixRigidBodyModes) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  const DofMap map = make_dof_map(h.machine, h.mesh);
  ASSERT_EQ(map.substructures.size(), 1U);
  const Substructure& c = map.substructures[0];
  EXPECT_EQ(c.name, "bed");
  EXPECT_TRUE(c.banded_by_station);
  EXPECT_EQ(c.rigid.cols(), 6);
  EXPECT_EQ(Eigen::FullPivLU<Eigen::MatrixXd>(c.rigid).rank(), 6);
  EXPECT_EQ(c.size, 3 * 6 - 6) << "one anchored for each rigid-body mode";
  EXPECT_TRUE(numbers_all(map, c));
  EXPECT_NEAR((c.centre - Eigen::Vector3d(0.5, 0, 0)).norm(), 0, 1e-15);
}

TEST(DofMap, HeldPointLeavesRotationsAboutIt) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  h.hold(0, {ux, uy, uz});
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const Substructure& c = map.substructures.at(0);
  ASSERT_EQ(c.rigid.cols(), 3) << "three rotations about the held point";
  for (Eigen::Index k = 0; k < 3; ++k) {
    const Eigen::Vector3d t = c.rigid.col(k).head<3>(), turn = c.rigid.col(k).tail<3>();
    EXPECT_NEAR((t + turn.cross(h.mesh.nodes[0].x - c.centre)).norm(), 0, 1e-12 * turn.norm());
  }
  EXPECT_EQ(c.size, 18 - 3 - 3);
  for (const int k : {ux, uy, uz}) EXPECT_EQ(map.dofs[0][static_cast<std::size_t>(k)], -1);
  EXPECT_TRUE(numbers_all(map, c));
}

TEST(DofMap, ClampedBarHasNone) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  h.clamp(0);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  EXPECT_EQ(map.substructures.at(0).rigid.cols(), 0);
  EXPECT_EQ(map.substructures.at(0).size, 12);
  EXPECT_EQ(map.constrained.size(), 6U);
}

TEST(DofMap, LinkedNodesShareOneReference) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  const int other = h.add_bar(BodyKind::bed, {0, 1}, 0.02, -0.1);
  EXPECT_EQ(make_dof_map(h.machine, h.mesh).substructures.size(), 2U);
  h.mesh.rigid_links = {{1, other + 1}};
  const DofMap map = make_dof_map(h.machine, h.mesh);
  ASSERT_EQ(map.substructures.size(), 1U);
  EXPECT_EQ(map.links[static_cast<std::size_t>(other) + 1].ref, 1);
  EXPECT_NEAR((map.links[static_cast<std::size_t>(other) + 1].arm - Eigen::Vector3d(0, 0.02, -0.1)).norm(), 0, 1e-15);
  EXPECT_EQ(map.links[1].ref, 1);
  EXPECT_TRUE(map.links[1].arm.isZero(0));
  EXPECT_EQ(map.substructures[0].nodes.size(), 3U) << "reference nodes only";
  EXPECT_EQ(map.substructures[0].size, 3 * 6 - 6);
}

// A held node needs no arm: it is the reference of those linked with it. A second held one is far.
TEST(DofMap, HeldNodeIsTheReference) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  const int other = h.add_bar(BodyKind::bed, {0, 1}, 0.02, -0.1);
  h.mesh.rigid_links = {{1, other + 1}};
  h.hold(other + 1, {uz});
  h.hold(1, {uy});
  const DofMap map = make_dof_map(h.machine, h.mesh);
  EXPECT_EQ(map.links[1].ref, other + 1);
  EXPECT_EQ(map.constrained, std::vector<int>{6 * (other + 1) + uz});
  EXPECT_EQ(map.offset_constraints, std::vector<int>{6 * 1 + uy});
}

// A tie acts between parts; a screw is a spring of the stiffness matrix and makes one of them.
TEST(DofMap, ScrewsJoinPartsTiesDoNot) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  const int clamp = h.add_bar(BodyKind::clamp, {0, 1}, 0, 0.1);
  Joint j;
  j.kind = JointKind::tie;
  j.a = h.place(1);
  j.b = h.place(clamp + 1);
  h.mesh.joints = {j};
  DofMap map = make_dof_map(h.machine, h.mesh);
  ASSERT_EQ(map.substructures.size(), 2U);
  EXPECT_EQ(map.substructures[0].name, "bed");
  EXPECT_EQ(map.substructures[1].name, "clamp");
  for (const Substructure& c : map.substructures) EXPECT_TRUE(numbers_all(map, c)) << c.name;
  h.mesh.joints[0].kind = JointKind::screw;
  map = make_dof_map(h.machine, h.mesh);
  ASSERT_EQ(map.substructures.size(), 1U);
  EXPECT_EQ(map.substructures[0].name, "bed with clamp");
}

TEST(DofMap, PlaneHasThreeRigidBodyModes) {
  test::HandMesh h;
  h.machine.solve.dimension = 2;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const Substructure& c = map.substructures.at(0);
  EXPECT_TRUE(map.plane);
  EXPECT_EQ(c.rigid.cols(), 3);
  for (const int k : {uy, rx, rz}) EXPECT_EQ(c.rigid.row(k).norm(), 0);
  EXPECT_EQ(c.size, 3 * 3 - 3);
  EXPECT_TRUE(moves(true, ry) && moves(false, uy));
  EXPECT_FALSE(moves(true, uy));
}

// Bars alone are numbered station by station, whatever the order of their nodes.
TEST(DofMap, BarsAreNumberedAlongX) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.5, 1});
  const int other = h.add_bar(BodyKind::bed, {0.1, 0.6}, 0.02);
  Joint screw;
  screw.kind = JointKind::screw;
  screw.a = h.place(1);
  screw.b = h.place(other);
  h.mesh.joints = {screw};
  const DofMap map = make_dof_map(h.machine, h.mesh);
  EXPECT_EQ(map.substructures.at(0).nodes, (std::vector<int>{0, other, 1, other + 1, 2}));
}

} // namespace
} // namespace bedbow
