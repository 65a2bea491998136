#include "mesh/machine/frame.h"
#include "solver/assembly/joint_springs.h"

#include "tests/unit/solver/assembly/hand_mesh.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace bedbow {
namespace {

const Eigen::Vector3d arm_a(0.05, -0.02, 0.1), arm_b(-0.03, 0.04, -0.06);

/// A spring between arms of two free bars, along axes of its own.
test::HandMesh spring_between(BodyKind one, BodyKind other, const Eigen::Matrix3d& axes) {
  test::HandMesh h;
  h.add_bar(one, {0, 1});
  const int second = h.add_bar(other, {0, 1}, 0.2, 0.3);
  Joint j;
  j.a = h.place(1, arm_a);
  j.b = h.place(second, arm_b);
  j.stiffness[ux] = 4e6;
  j.axes = axes;
  j.sense[ux] = UnilateralType::tension;
  j.gap[ux] = 0.002;
  h.mesh.joints = {j};
  return h;
}

/// Force and moment about the part's centre that unit tension of a row exerts on a part.
Vector6d pull_on(const JointSprings& set, const JointSpring& row, int component) {
  Vector6d out = Vector6d::Zero();
  for (const auto& [f, coefficient] : row.terms)
    if (set.functionals()[static_cast<std::size_t>(f)].component == component)
      out -= coefficient * set.functionals()[static_cast<std::size_t>(f)].rigid;
  return out;
}

/// Force along d at a point, and its moment about the centre: by statics.
Vector6d force_at(const Eigen::Vector3d& d, const Eigen::Vector3d& at, const Eigen::Vector3d& centre) {
  Vector6d out;
  out << d, (at - centre).cross(d);
  return out;
}

TEST(Rows, InclinedSpringPullsItsPlacesTogether) {
  const Eigen::Matrix3d axes = Eigen::AngleAxisd(0.8, Eigen::Vector3d(1, -2, 0.7).normalized()).toRotationMatrix();
  const test::HandMesh h = spring_between(BodyKind::bed, BodyKind::clamp, axes);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const JointSprings set(h.mesh, map);
  const auto rows = set.rows(h.mesh, 0);
  ASSERT_EQ(rows.size(), 1U);
  const JointSpring& row = rows[0];
  EXPECT_EQ(row.joint, 0);
  EXPECT_EQ(row.direction, ux);
  EXPECT_DOUBLE_EQ(row.compliance, 1 / 4e6);
  EXPECT_EQ(row.sense, UnilateralType::tension);
  EXPECT_DOUBLE_EQ(row.gap, 0.002);
  const Eigen::Vector3d d = axes.row(0); // the spring's own x
  const Joint& j = h.mesh.joints[0];
  const Vector6d on_a = pull_on(set, row, 0), on_b = pull_on(set, row, 1);
  EXPECT_LT((on_a - force_at(d, j.a.at, map.substructures[0].centre)).norm(), 1e-14);
  EXPECT_LT((on_b - force_at(-d, j.b.at, map.substructures[1].centre)).norm(), 1e-14);
}

// For any displacements, elongation times force is the work of the forces on both parts.
TEST(Rows, VirtualWork) {
  const Eigen::Matrix3d axes = Eigen::AngleAxisd(-0.5, Eigen::Vector3d(0.2, 1, 2).normalized()).toRotationMatrix();
  const test::HandMesh h = spring_between(BodyKind::bed, BodyKind::clamp, axes);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const JointSprings set(h.mesh, map);
  const JointSpring row = set.rows(h.mesh, 0).at(0);
  std::array<Vector6d, 2> moved;
  for (int c = 0; c < 2; ++c)
    for (int k = 0; k < 6; ++k) moved[static_cast<std::size_t>(c)][k] = std::cos(2.1 * k + 5 * c);
  const auto at = [&](const Place& p, std::size_t c) -> Eigen::Vector3d {
    const Eigen::Vector3d turn = moved[c].tail<3>();
    return moved[c].head<3>() + turn.cross(p.at - map.substructures[c].centre);
  };
  const Joint& j = h.mesh.joints[0];
  const double elongation = axes.row(0).dot(at(j.b, 1) - at(j.a, 0));
  EXPECT_NEAR(-pull_on(set, row, 0).dot(moved[0]) - pull_on(set, row, 1).dot(moved[1]), elongation, 1e-14);
}

// The apron's axes turn with it: a vertical force has components along both of its own axes.
TEST(Rows, TurnWithTheApron) {
  test::HandMesh h = spring_between(BodyKind::bed, BodyKind::apron, Eigen::Matrix3d::Identity());
  h.mesh.joints[0].stiffness = {0, 0, 1e6, 0, 0, 0};
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const JointSprings set(h.mesh, map);
  const double angle = 0.7;
  const JointSpring row = set.rows(h.mesh, angle).at(0);
  const Eigen::Vector3d own(0, std::sin(angle), std::cos(angle)); // z seen from axes that turned from y to -z
  const Eigen::Vector3d in_frame = apron_turn(angle).transpose() * Eigen::Vector3d::UnitZ();
  EXPECT_NEAR(in_frame.z(), own.z(), 1e-15);
  EXPECT_NEAR(std::abs(in_frame.y()), own.y(), 1e-15);
  EXPECT_LT((pull_on(set, row, 0).head<3>() - Eigen::Vector3d::UnitZ()).norm(), 1e-14) << "the bed does not turn";
  EXPECT_LT((pull_on(set, row, 1).head<3>() + in_frame).norm(), 1e-14);
  EXPECT_LT((apron_turn(angle) * pull_on(set, row, 1).head<3>() + Eigen::Vector3d::UnitZ()).norm(), 1e-14)
      << "vertical in space";
}

TEST(Rows, RigidFreeAndScrewed) {
  test::HandMesh h = spring_between(BodyKind::bed, BodyKind::clamp, Eigen::Matrix3d::Identity());
  h.mesh.joints[0].stiffness = {std::numeric_limits<double>::infinity(), 0, 0, 0, 500, 0};
  DofMap map = make_dof_map(h.machine, h.mesh);
  const auto rows = JointSprings(h.mesh, map).rows(h.mesh, 0);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows[0].compliance, 0);
  EXPECT_EQ(rows[1].direction, ry);
  EXPECT_DOUBLE_EQ(rows[1].compliance, 0.002);
  h.mesh.joints[0].kind = JointKind::screw; // a spring of the matrix
  map = make_dof_map(h.machine, h.mesh);
  EXPECT_TRUE(JointSprings(h.mesh, map).rows(h.mesh, 0).empty());
}

} // namespace
} // namespace bedbow
