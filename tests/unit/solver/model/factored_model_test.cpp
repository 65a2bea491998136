#include "solver/model/factored_model.h"
#include "solver/registry/registries.h"

#include "tests/unit/solver/assembly/hand_mesh.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

FactoredModel structure_of(const test::HandMesh& h, const DofMap& map,
                           const std::vector<DisplacementFunctional>& functionals) {
  const Registries r = builtin_registries();
  return factor_model(h.machine, h.mesh, map, make_element_data(h.machine, h.mesh, r.elements), functionals,
                      r.linear_solvers);
}

// Timoshenko's cantilever: a force at the end lowers it by L^3/3EI + L/GA, turns it by L^2/2EI; nodes between do not
// matter.
TEST(FactoredModel, ComplianceOfACantilever) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.3, 0.7, 1.2});
  h.clamp(0);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const Place tip = h.place(3), between = h.place(1);
  const Eigen::Vector3d y = Eigen::Vector3d::UnitY(), z = Eigen::Vector3d::UnitZ();
  const FactoredModel s = structure_of(h, map,
                                       {translation_of(h.mesh, map, tip, z), rotation_of(h.mesh, map, tip, y),
                                        translation_of(h.mesh, map, between, z),
                                        translation_of(h.mesh, map, tip, Eigen::Vector3d::UnitX())});
  ASSERT_TRUE(s.mechanisms.empty());
  const double L = 1.2, a = 0.3, EI = test::hand_E * test::hand_Iyy, GA = test::hand_G * test::hand_As;
  const auto expect = [](double found, double wanted) { EXPECT_NEAR(found, wanted, 1e-9 * std::abs(wanted)); };
  expect(s.compliance(0, 0), L * L * L / (3 * EI) + L / GA);
  expect(s.compliance(0, 1), -L * L / (2 * EI)); // dw/dx = -theta_y
  expect(s.compliance(1, 1), L / EI);
  expect(s.compliance(0, 2), a * a * (3 * L - a) / (6 * EI) + a / GA);
  expect(s.compliance(2, 2), a * a * a / (3 * EI) + a / GA);
  expect(s.compliance(3, 3), L / (test::hand_E * test::hand_A));
  EXPECT_EQ(s.compliance(0, 3), 0);
  EXPECT_EQ(s.rigid.cols(), 0);
  EXPECT_EQ(s.unknowns, 18);
}

// Separate bars are not coupled by compliance.
TEST(FactoredModel, SeparatePartsAreUncoupled) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  const int clamp = h.add_bar(BodyKind::clamp, {0, 1}, 0, 0.1);
  h.clamp(0);
  h.clamp(clamp);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const Eigen::Vector3d z = Eigen::Vector3d::UnitZ();
  const FactoredModel s = structure_of(
      h, map, {translation_of(h.mesh, map, h.place(1), z), translation_of(h.mesh, map, h.place(clamp + 1), z)});
  EXPECT_EQ(s.compliance(0, 1), 0);
  EXPECT_GT(s.compliance(0, 0), 0);
  EXPECT_NEAR(s.compliance(0, 0), s.compliance(1, 1), 1e-12 * s.compliance(0, 0));
}

TEST(FactoredModel, RigidAmplitudesMoveAFreePart) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1}, 0.1, -0.2);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const Place end = h.place(2, {0, 0.05, 0.07});
  const FactoredModel s = structure_of(h, map, {translation_of(h.mesh, map, end, Eigen::Vector3d::UnitZ())});
  ASSERT_EQ(s.rigid.cols(), 6);
  Displacements d;
  d.elastic = {Eigen::VectorXd::Zero(map.substructures[0].size)};
  d.rigid_amplitudes.resize(6);
  d.rigid_amplitudes << 0.1, -0.2, 0.3, 0.4, 0.5, -0.6;
  const Vector6d whole = map.substructures[0].rigid * d.rigid_amplitudes;
  const Eigen::Vector3d t = whole.head<3>(), turn = whole.tail<3>();
  const auto moved = node_motions(h.mesh, map, s, d);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_LT((moved[i].head<3>() - t - turn.cross(h.mesh.nodes[i].x - map.substructures[0].centre)).norm(), 1e-14);
    EXPECT_LT((moved[i].tail<3>() - turn).norm(), 1e-14);
  }
  const Eigen::Vector3d there = t + turn.cross(end.at - map.substructures[0].centre);
  EXPECT_NEAR((s.rigid * d.rigid_amplitudes)(0), there.z(), 1e-14);
}

// A rod between two places of one free part: a rigid-body motion stretches it by exactly zero.
TEST(FactoredModel, RodWithinAPartIgnoresRigidBodyMotion) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.3, 1.1}, 0.13, -0.37);
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const Eigen::Vector3d d = Eigen::Vector3d::UnitX();
  const FactoredModel s =
      structure_of(h, map, {translation_of(h.mesh, map, h.place(0), d), translation_of(h.mesh, map, h.place(2), d)});
  JointSpring row;
  row.terms.add(0, -1);
  row.terms.add(1, 1);
  EXPECT_TRUE(rigid_elongation(s, row).isZero(0));
  JointSpring one;
  one.terms.add(0, 1);
  EXPECT_GT(rigid_elongation(s, one).norm(), 0.1);
}

TEST(FactoredModel, NamesAMechanismInsideAPart) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.4, 1});
  h.clamp(0);
  h.mesh.beams[1].release_a[rx] = true; // the outer half turns about its axis
  const DofMap map = make_dof_map(h.machine, h.mesh);
  const FactoredModel s = structure_of(h, map, {});
  ASSERT_EQ(s.mechanisms.size(), 1U);
  EXPECT_EQ(s.mechanisms[0].part, "bed");
  EXPECT_EQ(s.mechanisms[0].dof, rx);
  EXPECT_NEAR(s.mechanisms[0].at.x(), 1, 1e-15);
}

TEST(FactoredModel, UnknownSolverIsAnError) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  h.machine.solve.linear_solver = "none such";
  const DofMap map = make_dof_map(h.machine, h.mesh);
  EXPECT_THROW(structure_of(h, map, {}), std::invalid_argument);
}

} // namespace
} // namespace bedbow
