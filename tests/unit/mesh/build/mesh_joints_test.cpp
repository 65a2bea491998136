#include "mesh/build/mesher.h"
#include "mesh/piece/fastener_stiffness.h"

#include "tests/unit/mesh/build/plain_machine.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

constexpr Ref ground{Ref::Kind::ground}, clamp_bar{Ref::Kind::bar, BodyKind::clamp, 0},
    apron_bar{Ref::Kind::bar, BodyKind::apron, 0};

Machine with_clamp_and_apron() {
  Machine m = test::plain_bed();
  m.body(BodyKind::clamp).bars = {test::plain_bar("flat", 0.06, 0.04, 0.03, 0.03)};
  m.body(BodyKind::apron).bars = {test::plain_bar("face", 0.06, 0.02, -0.03, -0.01)};
  return m;
}

template <class J> J joint_at(const std::array<Ref, 2>& joins, const GivenPoint& at) {
  J j;
  j.joins = joins;
  j.at = at;
  return j;
}

/// The only joint that is neither a contact nor a pad.
Joint only_joint(const Machine& m) {
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  std::vector<Joint> found;
  for (const Joint& j : mesh.joints)
    if (j.kind != JointKind::pressure) found.push_back(j);
  EXPECT_EQ(found.size(), 1U);
  return found.at(0);
}

// A stud of plain diameter: along z E A / L in series with its two nuts (VDI 2230: 0.4 d of the shank and 0.5 d of the
// thread each), and 12 E I / L^3 sideways, fixed at both ends.
TEST(MeshJoints, PostIsAStudFixedAtBothEnds) {
  Machine m = with_clamp_and_apron();
  Post p = joint_at<Post>({test::bed_bar, clamp_bar}, {0.3, left_out, left_out});
  p.diameter = 0.016;
  p.free_length = 0.13;
  p.preload = 5000;
  m.posts = {p};
  const Joint j = only_joint(m);
  EXPECT_EQ(j.name, "post 1");
  const double d = p.diameter, L = p.free_length, E = fastener_E;
  EXPECT_NEAR(j.stiffness[uz], E * std::numbers::pi * d * d / 4 / (L + 2 * (0.4 + 0.5) * d), 1e-9 * j.stiffness[uz]);
  EXPECT_NEAR(j.stiffness[ux], 12 * E * std::numbers::pi * std::pow(d, 4) / 64 / std::pow(L, 3),
              1e-9 * j.stiffness[ux]);
  EXPECT_DOUBLE_EQ(j.stiffness[uy], j.stiffness[ux]);
  EXPECT_EQ(j.sense[uz], UnilateralType::tension);
  EXPECT_DOUBLE_EQ(j.preload.value(), 5000);
  EXPECT_FALSE(j.swapped);
  // In the middle of the free length below the top of the clamp's bar, z = 50 mm; across where the bars overlap, y = 0
  // to 20 mm.
  EXPECT_NEAR((j.a.at - Eigen::Vector3d(0.3, 0.01, 0.05 - 0.065)).norm(), 0, 1e-12);
}

TEST(MeshJoints, LowerSideComesFirst) {
  Machine m = with_clamp_and_apron();
  m.cams = {joint_at<Cam>({clamp_bar, test::bed_bar}, {0.3, 0.012, left_out})};
  m.cams[0].lift = 0.0004;
  const Joint j = only_joint(m);
  EXPECT_TRUE(j.swapped);
  EXPECT_LT(j.a.terms.at(0).lever().z() + j.a.at.z(), 1);
  EXPECT_EQ(j.sense[uz], UnilateralType::compression);
  EXPECT_DOUBLE_EQ(j.gap[uz], 0.0004);
  EXPECT_GT(j.stiffness[uz], 1e12) << "far stiffer than any bar";
  // The bars' faces are 0 and 10 mm: the place lies midway in the gap.
  EXPECT_NEAR(j.a.at.z(), 0.005, 1e-12);
  EXPECT_NEAR(j.a.terms.at(0).lever().z(), 0.055, 1e-12) << "from the bed's centroid";
  EXPECT_NEAR(j.b.terms.at(0).lever().z(), -0.025, 1e-12) << "from the clamp's";
}

TEST(MeshJoints, HingeHoldsAPointOnTheBendLine) {
  Machine m = with_clamp_and_apron();
  m.hinges = {joint_at<Hinge>({apron_bar, test::bed_bar}, {0.1, left_out, left_out})};
  const Joint j = only_joint(m);
  EXPECT_EQ(j.b.frame, Frame::apron);
  EXPECT_EQ(j.a.frame, Frame::fixed);
  EXPECT_NEAR((j.a.at - Eigen::Vector3d(0.1, 0, 0)).norm(), 0, 1e-15);
  for (const int k : {ux, uy, uz}) EXPECT_TRUE(std::isinf(j.stiffness[static_cast<std::size_t>(k)]));
  for (const int k : {rx, ry, rz}) EXPECT_EQ(j.stiffness[static_cast<std::size_t>(k)], 0);
}

TEST(MeshJoints, HandleSupportAndTie) {
  Machine m = with_clamp_and_apron();
  m.handles = {joint_at<Handle>({apron_bar, ground}, {0.45, left_out, left_out})};
  const Joint handle = only_joint(m);
  EXPECT_TRUE(handle.a.ground());
  EXPECT_TRUE(std::isinf(handle.stiffness[rx]));
  EXPECT_EQ(handle.stiffness[uz], 0);
  m.handles.clear();
  Support s = joint_at<Support>({test::bed_bar, ground}, {0.2, left_out, left_out});
  s.holds = {true, false, true, false, true, false};
  s.stiffness = 3e6;
  s.rotational_stiffness = 700;
  m.supports = {s};
  const Joint support = only_joint(m);
  EXPECT_TRUE(support.a.ground());
  EXPECT_EQ(support.stiffness, (std::array<double, 6>{3e6, 0, 3e6, 0, 700, 0}));
  EXPECT_NEAR((support.b.at - Eigen::Vector3d(0.2, 0.01, -0.05)).norm(), 0, 1e-15) << "at the centroid";
  m.supports.clear();
  Tie t = joint_at<Tie>({test::bed_bar, clamp_bar}, {0.25, 0.01, 0});
  t.holds = {false, true, false, false, false, true};
  t.stiffness = 2e6;
  m.ties = {t};
  const Joint tie = only_joint(m);
  EXPECT_DOUBLE_EQ(tie.stiffness[uy], 2e6);
  EXPECT_TRUE(std::isinf(tie.stiffness[rz])) << "rigid where nothing is given";
  EXPECT_EQ(tie.sense[uy], UnilateralType::both);
}

// A tie that only pulls is one joint for each direction, stiff but never rigid.
TEST(MeshJoints, OneSidedTie) {
  Machine m = with_clamp_and_apron();
  Tie t = joint_at<Tie>({test::bed_bar, clamp_bar}, {0.25, 0.01, 0});
  t.holds = {true, false, true, false, false, false};
  t.only = UnilateralType::tension;
  m.ties = {t};
  const Mesh mesh = make_mesh(m, test::plain_shapes());
  int ties = 0;
  for (const Joint& j : mesh.joints) {
    if (j.kind != JointKind::tie) continue;
    const std::size_t k = ties++ == 0 ? ux : uz;
    EXPECT_EQ(j.sense[k], UnilateralType::tension);
    EXPECT_TRUE(std::isfinite(j.stiffness[k]) && j.stiffness[k] > 1e12);
  }
  EXPECT_EQ(ties, 2);
}

} // namespace
} // namespace bedbow
