#include "tests/unit/element/beam_samples.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

constexpr double span = 0.8;

// Kinetic energy of a rigid movement is that of the solid bar, whatever the section's axes.
TEST(BeamMass, RigidMovementsHaveTheBarsInertia) {
  const BeamData d = sample::odd();
  const SectionProperties& p = d.section;
  const double m = d.density * p.A * span, i = d.density * span;
  Eigen::MatrixXd wanted = Eigen::MatrixXd::Zero(6, 6); // about node 1
  wanted.diagonal() << m, m, m, i * (p.Iyy + p.Izz), i * p.Iyy + m * span * span / 3, i * p.Izz + m * span * span / 3;
  wanted(4, 5) = wanted(5, 4) = -i * p.Iyz;
  wanted(2, 4) = wanted(4, 2) = -m * span / 2;
  wanted(1, 5) = wanted(5, 1) = m * span / 2;
  Eigen::MatrixXd R(12, 6);
  for (int j = 0; j < 6; ++j) R.col(j) = sample::rigid(span, Vector6d::Unit(j));
  const Eigen::MatrixXd found = R.transpose() * beam_mass(d, span) * R;
  EXPECT_LT((found - wanted).cwiseAbs().maxCoeff(), 1e-12 * m);
}

TEST(BeamMass, ConsistentIsThePlainBeamsWhenShearAndRotaryInertiaVanish) {
  BeamData d = sample::bar();
  d.section.Ay = d.section.Az = std::numeric_limits<double>::infinity();
  const Eigen::MatrixXd M = beam_mass(d, span);
  const double m = d.density * d.section.A * span, rotary = d.density * d.section.Iyy / (30 * span);
  // Przemieniecki 1968, ch. 11 (from memory): 13/35, 11/210, 1/105 and the rotary 36, 3, 4 over 30 L.
  EXPECT_NEAR(M(2, 2), 13 * m / 35 + 36 * rotary, 1e-12 * m);
  EXPECT_NEAR(M(2, 4), -(11 * m * span / 210 + 3 * span * rotary), 1e-12 * m);
  EXPECT_NEAR(M(4, 4), m * span * span / 105 + 4 * span * span * rotary, 1e-12 * m);
  EXPECT_NEAR(M(2, 8), 9 * m / 70 - 36 * rotary, 1e-12 * m);
  EXPECT_NEAR(M(0, 6), m / 6, 1e-12 * m);
}

TEST(BeamMass, IsSymmetricAndPositive) {
  for (const bool lumped : {false, true}) {
    const Eigen::MatrixXd M = beam_mass(sample::odd(), span, lumped);
    EXPECT_EQ((M - M.transpose()).cwiseAbs().maxCoeff(), 0);
    EXPECT_GT(symmetric_eigenvalues(M)(0), 0);
  }
}

TEST(BeamMass, LumpedIsDiagonalAndWeighsTheSame) {
  const BeamData d = sample::odd();
  const Eigen::MatrixXd M = beam_mass(d, span, true);
  EXPECT_EQ((M - Eigen::MatrixXd(M.diagonal().asDiagonal())).norm(), 0);
  for (int i = 0; i < 3; ++i) EXPECT_NEAR(M(i, i) + M(i + 6, i + 6), d.density * d.section.A * span, 1e-12);
}

} // namespace
} // namespace bedbow
