#include "solver/assembly/assembly.h"
#include "solver/linear/dense.h"
#include "solver/registry/registries.h"

#include "tests/unit/solver/assembly/hand_mesh.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace bedbow {
namespace {

Eigen::MatrixXd stiffness_of(const test::HandMesh& h, const DofMap& map) {
  const ElementData data = make_element_data(h.machine, h.mesh, builtin_registries().elements);
  const auto parts = assemble_stiffness(h.machine, h.mesh, map, data);
  EXPECT_EQ(parts.size(), 1U);
  const Eigen::MatrixXd lower = parts.at(0);
  EXPECT_EQ(lower.triangularView<Eigen::StrictlyUpper>().toDenseMatrix().norm(), 0) << "a lower triangle";
  return lower.selfadjointView<Eigen::Lower>();
}

/// All unknowns of a single part, nothing held or anchored.
DofMap with_all_free(const test::HandMesh& h) {
  DofMap map = make_dof_map(h.machine, h.mesh);
  Substructure& c = map.substructures.at(0);
  c.size = 0;
  for (const int n : c.nodes)
    for (int& d : map.dofs[n]) d = c.size++;
  return map;
}

// A bar of two elements, held at its left end: sums of the elements' entries, after Euler and Bernoulli.
TEST(Assembly, TwoElementsByHand) {
  test::HandMesh h;
  h.mesh.sections[0].props.Ay = h.mesh.sections[0].props.Az = std::numeric_limits<double>::infinity();
  const double a = 0.4, b = 0.6;
  h.add_bar(BodyKind::bed, {0, a, a + b});
  h.clamp(0);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const Eigen::MatrixXd k = stiffness_of(h, map);
  ASSERT_EQ(k.rows(), 12);
  const auto entry = [&](int node_1, int dof_1, int node_2, int dof_2) {
    return k(map.dofs[node_1][dof_1], map.dofs[node_2][dof_2]);
  };
  const auto expect = [&](double found, double wanted) { EXPECT_NEAR(found, wanted, 1e-10 * std::abs(wanted)); };
  const double EA = test::hand_E * test::hand_A, GJ = test::hand_G * test::hand_J;
  const double about_y = test::hand_E * test::hand_Iyy, about_z = test::hand_E * test::hand_Izz;
  expect(entry(1, ux, 1, ux), EA / a + EA / b);
  expect(entry(1, ux, 2, ux), -EA / b);
  expect(entry(2, ux, 2, ux), EA / b);
  expect(entry(1, rx, 1, rx), GJ / a + GJ / b);
  expect(entry(1, rx, 2, rx), -GJ / b);
  expect(entry(1, uz, 1, uz), 12 * about_y * (1 / (a * a * a) + 1 / (b * b * b)));
  expect(entry(1, uz, 2, uz), -12 * about_y / (b * b * b));
  expect(entry(1, ry, 1, ry), 4 * about_y * (1 / a + 1 / b));
  expect(entry(1, ry, 2, ry), 2 * about_y / b);
  // A rotation about +y lowers points at greater x: ry = -dw/dx.
  expect(entry(1, uz, 1, ry), 6 * about_y * (1 / (a * a) - 1 / (b * b)));
  expect(entry(2, uz, 2, ry), 6 * about_y / (b * b));
  expect(entry(2, uy, 2, uy), 12 * about_z / (b * b * b));
  expect(entry(2, uy, 2, rz), -6 * about_z / (b * b));
  EXPECT_EQ(entry(2, ux, 2, uz), 0);
}

// Two bars, one of them on a rigid link with an arm, screwed together off their axes: a common rigid-body motion needs
// no force.
TEST(Assembly, RigidBodyMotionNeedsNoForce) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  const int other = h.add_bar(BodyKind::bed, {0, 0.4, 1}, 0.03, -0.2);
  h.mesh.rigid_links = {{0, other}};
  Joint screw;
  screw.kind = JointKind::screw;
  screw.a = h.place(2, {0, 0.01, -0.1});
  screw.b = h.place(other + 2, {0, -0.02, 0.1});
  screw.stiffness = {3e7, 2e7, 5e8, 0, 0, 0};
  h.mesh.joints = {screw};
  const DofMap map = with_all_free(h);
  const Eigen::MatrixXd k = stiffness_of(h, map);
  Eigen::MatrixXd rigid = Eigen::MatrixXd::Zero(k.rows(), 6);
  for (int m = 0; m < 6; ++m)
    for (const int n : map.substructures[0].nodes) {
      Vector6d u = Vector6d::Unit(m);
      const Eigen::Vector3d turn = u.tail<3>();
      u.head<3>() += turn.cross(h.mesh.nodes[n].x);
      for (int d = 0; d < 6; ++d) rigid(map.dofs[n][d], m) = u[d];
    }
  EXPECT_LT((k * rigid).cwiseAbs().maxCoeff(), 1e-9 * k.cwiseAbs().maxCoeff());
  // No other mode is free: exactly six eigenvalues vanish.
  const Eigen::VectorXd values = symmetric_eigenvalues(k);
  EXPECT_LT(std::abs(values[5]), 1e-9 * values[k.rows() - 1]);
  EXPECT_GT(values[6], 1e-9 * values[k.rows() - 1]);
}

// A linked node's element acts on the reference node through its arm: a force there has a moment about it.
TEST(Assembly, ArmTurnsAForceIntoAMoment) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  const double arm = 0.25;
  const int other = h.add_bar(BodyKind::bed, {1, 2}, 0, arm);
  h.mesh.rigid_links = {{1, other}};
  const DofMap map = with_all_free(h);
  const Eigen::MatrixXd k = stiffness_of(h, map);
  // Pulling the far end of the upper bar along x while the reference stays: its force, times the arm about y.
  const double EA = test::hand_E * test::hand_A;
  const int pulled = map.dofs[other + 1][ux];
  EXPECT_NEAR(k(map.dofs[1][ux], pulled), -EA, 1e-9 * EA);
  EXPECT_NEAR(k(map.dofs[1][ry], pulled), -EA * arm, 1e-9 * EA);
}

TEST(Assembly, ReleasedEndsMakeARod) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.5});
  h.mesh.beams[0].release_a = {false, false, false, false, true, true};
  h.mesh.beams[0].release_b = {false, false, false, true, true, true};
  const DofMap map = with_all_free(h);
  const Eigen::MatrixXd k = stiffness_of(h, map);
  const double EA = test::hand_E * test::hand_A;
  Eigen::MatrixXd rod = Eigen::MatrixXd::Zero(12, 12);
  const int a = map.dofs[0][ux], b = map.dofs[1][ux];
  rod(a, a) = rod(b, b) = EA / 0.5;
  rod(a, b) = rod(b, a) = -EA / 0.5;
  EXPECT_LT((k - rod).cwiseAbs().maxCoeff(), 1e-9 * EA);
}

// The far end of a bar is moved by 1 mm: the reaction at the near end is EA u / L.
TEST(Assembly, PrescribedDisplacementGivesTheReaction) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  const DofMap map = with_all_free(h);
  const Eigen::MatrixXd k = stiffness_of(h, map);
  Eigen::VectorXd u = Eigen::VectorXd::Zero(k.rows());
  u[map.dofs[1][ux]] = 0.4e-3;
  u[map.dofs[2][ux]] = 1e-3;
  const Eigen::VectorXd force = k * u;
  const double pull = test::hand_E * test::hand_A * 1e-3;
  EXPECT_NEAR(force[map.dofs[2][ux]], pull, 1e-9 * pull);
  EXPECT_NEAR(force[map.dofs[0][ux]], -pull, 1e-9 * pull);
  EXPECT_NEAR(force[map.dofs[1][ux]], 0, 1e-9 * pull);
}

TEST(Assembly, HintsOfBarsAndOfThePlane) {
  Substructure c;
  c.banded_by_station = true;
  EXPECT_EQ(hints_of(c, false).block, 6);
  EXPECT_EQ(hints_of(c, true).block, 3);
  EXPECT_TRUE(hints_of(c, false).banded_order && hints_of(c, false).positive);
  c.banded_by_station = false;
  EXPECT_FALSE(hints_of(c, false).banded_order);
}

} // namespace
} // namespace bedbow
