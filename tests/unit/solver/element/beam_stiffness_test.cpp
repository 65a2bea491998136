#include "tests/unit/element/beam_samples.h"
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace bedbow {
namespace {

using Eigen::MatrixXd;

MatrixXd inverse_of(const MatrixXd& a) {
  return solve_dense(a, MatrixXd::Identity(a.rows(), a.cols()));
}

// Another road to the same matrix: the section's 6 x 6 law about the centroid, the equations of the line integrated
// exactly (the exponential series of this system ends after the fourth term), forces at the ends solved from the ends'
// movements. Knows nothing of sways, shapes or shear-centre transformations.
MatrixXd by_transfer_matrix(const BeamData& d, double L) {
  const SectionProperties& p = d.section;
  // Strains (eps, gamma_y, gamma_z, kappa_x, kappa_y, kappa_z) about the centroid: shear strain of the shear centre is
  // gamma_y - z_s kappa_x, gamma_z + y_s kappa_x.
  MatrixXd shift = MatrixXd::Identity(6, 6);
  shift(1, 3) = -p.shear_centre.y();
  shift(2, 3) = p.shear_centre.x();
  MatrixXd law = MatrixXd::Zero(6, 6);
  law.diagonal() << d.E * p.A, d.G * p.Ay, d.G * p.Az, d.G * p.J, d.E * p.Iyy, d.E * p.Izz;
  law(4, 5) = law(5, 4) = -d.E * p.Iyz;
  const MatrixXd C = inverse_of(shift.transpose() * law * shift);
  // state (u, theta, F, M): u' = gamma - e_x x theta... with eps, gamma the strains: v' = gamma_y + rz, w' = gamma_z -
  // ry.
  MatrixXd A = MatrixXd::Zero(12, 12);
  A.block(0, 6, 6, 6) = C;
  A(1, 5) = 1;
  A(2, 4) = -1;
  A(10, 8) = 1;  // My' = Vz
  A(11, 7) = -1; // Mz' = -Vy
  MatrixXd term = MatrixXd::Identity(12, 12), T = term;
  for (int n = 1; n <= 8; ++n) {
    term = term * A * (L / n);
    T += term;
  }
  const MatrixXd Tuu = T.topLeftCorner(6, 6), Tuf = T.topRightCorner(6, 6), Tfu = T.bottomLeftCorner(6, 6),
                 Tff = T.bottomRightCorner(6, 6);
  const MatrixXd inv = inverse_of(Tuf);
  MatrixXd K(12, 12);
  K.topLeftCorner(6, 6) = inv * Tuu; // forces on node 1 are minus the section's
  K.topRightCorner(6, 6) = -inv;
  K.bottomLeftCorner(6, 6) = Tfu - Tff * inv * Tuu;
  K.bottomRightCorner(6, 6) = Tff * inv;
  return K;
}

double relative(const MatrixXd& a, const MatrixXd& b) {
  // Rows and columns carry different units; scale by the diagonal.
  const Eigen::VectorXd s = b.diagonal().cwiseSqrt().cwiseInverse();
  return (s.asDiagonal() * (a - b) * s.asDiagonal()).cwiseAbs().maxCoeff();
}

TEST(BeamStiffness, AgreesWithTheTransferMatrix) {
  for (const BeamData& d : {sample::bar(), sample::odd()})
    for (const double L : {0.01, 0.3, 5.0})
      EXPECT_LT(relative(beam_stiffness(d, L), by_transfer_matrix(d, L)), L > 1 ? 1e-9 : 1e-11) << L;
}

TEST(BeamStiffness, IsExactlySymmetricOfRankSix) {
  for (const BeamData& d : {sample::bar(), sample::odd()}) {
    for (const MatrixXd& K :
         {MatrixXd(beam_stiffness(d, 0.4)), MatrixXd(beam_stiffness_global(d, 0.4, sample::skew_axes()))}) {
      EXPECT_EQ((K - K.transpose()).cwiseAbs().maxCoeff(), 0);
      // Lengths in units of the beam's own size, so that the eigenvalues compare.
      const Vector6d unit = (Vector6d() << 1, 1, 1, 50, 50, 50).finished();
      const Vector12d s = (Vector12d() << unit, unit).finished();
      const MatrixXd scaled = s.asDiagonal() * K * s.asDiagonal();
      const Eigen::VectorXd lambda = symmetric_eigenvalues(scaled);
      EXPECT_LT(std::abs(lambda(5)), 1e-11 * lambda(11));
      EXPECT_LT(std::abs(lambda(0)), 1e-11 * lambda(11));
      EXPECT_GT(lambda(6), 1e-7 * lambda(11));
    }
  }
}

TEST(BeamStiffness, RigidMovementsCostNothing) {
  const double L = 0.7;
  const MatrixXd K = beam_stiffness(sample::odd(), L);
  for (int i = 0; i < 6; ++i) {
    const Vector12d f = K * sample::rigid(L, Vector6d::Unit(i));
    EXPECT_LT(f.cwiseAbs().maxCoeff(), 1e-12 * K.cwiseAbs().maxCoeff()) << i;
  }
}

TEST(BeamStiffness, GlobalIsTheLocalOneTurned) {
  const Eigen::Matrix3d R = sample::skew_axes();
  const Matrix12d K = beam_stiffness(sample::odd(), 0.7);
  const MatrixXd G = beam_stiffness_global(sample::odd(), 0.7, R);
  MatrixXd T = MatrixXd::Zero(12, 12);
  for (int i = 0; i < 12; i += 3) T.block<3, 3>(i, i) = R;
  EXPECT_LT(relative(G, T.transpose() * K * T), 1e-13);
  EXPECT_LT(relative(G, beam_to_global(K, R)), 1e-13);
  const Vector12d u = Vector12d::LinSpaced(-1, 2);
  EXPECT_LT((beam_to_local(u, R) - T * u).norm(), 1e-14);
  EXPECT_LT((beam_to_global(beam_to_local(u, R), R) - u).norm(), 1e-14);
}

// Turning the section within its own axes is turning the axes: an unsymmetric section in disguise.
TEST(BeamStiffness, TurnedRectangleIsAnUnsymmetricSection) {
  const double c = std::cos(0.5), s = std::sin(0.5);
  const BeamData plain = sample::bar(); // its equal shear areas turn into themselves
  BeamData turned = plain;
  const SectionProperties& p = plain.section;
  turned.section.Iyy = c * c * p.Iyy + s * s * p.Izz;
  turned.section.Izz = s * s * p.Iyy + c * c * p.Izz;
  turned.section.Iyz = c * s * (p.Izz - p.Iyy); // y' = c y - s z, z' = s y + c z
  Eigen::Matrix3d R;
  R << 1, 0, 0, 0, c, -s, 0, s, c; // components in the new axes from those in the section's own
  EXPECT_LT(relative(beam_stiffness(turned, 0.5), beam_to_global(beam_stiffness(plain, 0.5), R.transpose())), 1e-13);
}

// Two short elements are one long one: the element is exact, so a node between the ends changes nothing.
TEST(BeamStiffness, HalvesCondenseToTheWhole) {
  const BeamData d = sample::odd();
  const Matrix12d half = beam_stiffness(d, 0.45);
  MatrixXd K = MatrixXd::Zero(18, 18);
  K.topLeftCorner(12, 12) += half;
  K.bottomRightCorner(12, 12) += half;
  MatrixXd kept(12, 12), mixed(12, 6);
  kept << K.topLeftCorner(6, 6), K.topRightCorner(6, 6), K.bottomLeftCorner(6, 6), K.bottomRightCorner(6, 6);
  mixed << K.block(0, 6, 6, 6), K.block(12, 6, 6, 6);
  const MatrixXd condensed = kept - mixed * solve_dense(K.block(6, 6, 6, 6), mixed.transpose());
  EXPECT_LT(relative(condensed, beam_stiffness(d, 0.9)), 1e-11);
}

// A channel-like cantilever, load through the centroid along z, shear centre behind the web: it twists by the load's
// arm about the shear centre, and the load through the shear centre does not.
TEST(BeamStiffness, ChannelTwistsUnlessLoadedThroughTheShearCentre) {
  BeamData d = sample::bar();
  d.section.shear_centre = {-0.03, 0};
  const double L = 0.8, P = 1000, e = 0.03;
  const MatrixXd K = beam_stiffness(d, L);
  Vector12d f = Vector12d::Zero();
  f(8) = P;
  const std::vector<int> root = {0, 1, 2, 3, 4, 5};
  Eigen::VectorXd u = sample::solve_held(K, f, root);
  EXPECT_NEAR(u(9), P * e * L / (d.G * d.section.J), 1e-10 * u(9));
  const double bend = P * L * L * L / (3 * d.E * d.section.Iyy) + P * L / (d.G * d.section.Az);
  EXPECT_NEAR(u(8), bend + e * u(9), 1e-10 * u(8)); // the centroid sinks by the twist besides
  f(9) = -P * e;                                    // moved to the shear centre
  u = sample::solve_held(K, f, root);
  EXPECT_NEAR(u(9), 0, 1e-14);
  EXPECT_NEAR(u(8), bend, 1e-10 * bend);
}

// Unsymmetric bending in closed form: v'' and w'' from the 2 x 2 law.
TEST(BeamStiffness, UnsymmetricCantileverMovesSideways) {
  BeamData d = sample::odd();
  d.section.shear_centre = {0, 0};
  const SectionProperties& p = d.section;
  const double L = 1.2, P = 500, det = p.Iyy * p.Izz - p.Iyz * p.Iyz;
  Vector12d f = Vector12d::Zero();
  f(8) = P;
  const Eigen::VectorXd u = sample::solve_held(beam_stiffness(d, L), f, {0, 1, 2, 3, 4, 5});
  EXPECT_NEAR(u(8), P * L * L * L / (3 * d.E) * p.Izz / det + P * L / (d.G * p.Az), 1e-9 * u(8));
  EXPECT_NEAR(u(7), -P * L * L * L / (3 * d.E) * p.Iyz / det, 1e-9 * std::abs(u(7)));
}

TEST(BeamStiffness, InfiniteShearAreaIsThePlainBeam) {
  BeamData d = sample::bar();
  d.section.Ay = d.section.Az = std::numeric_limits<double>::infinity();
  const double L = 0.5;
  const Matrix12d K = beam_stiffness(d, L);
  EXPECT_NEAR(K(2, 2), 12 * d.E * d.section.Iyy / (L * L * L), 1e-12 * K(2, 2));
  EXPECT_NEAR(K(4, 10), 2 * d.E * d.section.Iyy / L, 1e-12 * K(4, 4));
}

TEST(BeamStiffness, LengthMustBeAboveZero) {
  EXPECT_THROW(beam_stiffness(sample::bar(), 0), std::invalid_argument);
  EXPECT_THROW(beam_stiffness(sample::bar(), -1), std::invalid_argument);
  EXPECT_THROW(beam_stiffness(sample::bar(), std::nan("")), std::invalid_argument);
}

} // namespace
} // namespace bedbow
