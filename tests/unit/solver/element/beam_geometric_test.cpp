#include "solver/element/beam_shape.h"

#include "tests/unit/element/beam_samples.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Matrix3d cross_matrix(const Vector3d& a) {
  Matrix3d m;
  m << 0, -a.z(), a.y(), a.z(), 0, -a.x(), -a.y(), a.x(), 0;
  return m;
}

// Rotation by a vector, to third order: enough for second differences.
Matrix3d turn(const Vector3d& t) {
  const Matrix3d X = cross_matrix(t);
  return Matrix3d::Identity() + X + X * X / 2 + X * X * X / 6;
}

constexpr double L = 0.5;

SectionForces forces(double x) {
  SectionForces f;
  f.Vy = 700;
  f.Vz = -400;
  f.T = 35;
  f.My = 20 + f.Vz * x;
  f.Mz = -50 - f.Vy * x;
  return f;
}

// Work of constant section forces on the strains of the geometrically exact beam (Simo 1985): R' x' - e_x and the
// axial vector of R' R', with finite rotations; nothing expanded.
double work(const BeamData& d, const Vector12d& u) {
  double sum = 0;
  const int n = 24;
  for (int i = 0; i < n; ++i) {
    for (const double g : {-1 / std::sqrt(3.0), 1 / std::sqrt(3.0)}) {
      const double s = (i + 0.5 + g / 2) / n;
      const beam::Shapes at = beam::shapes(d, L, s);
      const Vector6d m = at.value * u, slope = at.slope * u;
      const Vector3d theta = m.tail<3>(), dtheta = slope.tail<3>();
      const Matrix3d R = turn(theta);
      const double h = 1e-5;
      const Matrix3d dR = (turn(theta + h * dtheta) - turn(theta - h * dtheta)) / (2 * h);
      const Vector3d strain = R.transpose() * (Vector3d::UnitX() + slope.head<3>()) - Vector3d::UnitX();
      const Matrix3d k = R.transpose() * dR;
      const Vector3d curvature(k(2, 1), k(0, 2), k(1, 0));
      const SectionForces f = forces(s * L);
      const Eigen::Vector2d sc = d.section.shear_centre;
      sum += L / (2 * n) *
             (strain.dot(Vector3d(f.N, f.Vy, f.Vz)) +
              curvature.dot(Vector3d(f.T + sc.x() * f.Vz - sc.y() * f.Vy, f.My, f.Mz)));
    }
  }
  return sum;
}

TEST(BeamGeometric, IsTheSecondDifferenceOfTheExactBeamsWork) {
  const BeamData d = sample::odd();
  const Matrix12d K = beam_geometric(d, L, forces(0), forces(L));
  const double h = 1e-3;
  for (int i = 0; i < 12; ++i)
    for (int j = 0; j <= i; ++j) {
      const Vector12d a = h * Vector12d::Unit(i), b = h * Vector12d::Unit(j);
      const double second = (work(d, a + b) - work(d, a - b) - work(d, b - a) + work(d, -a - b)) / (4 * h * h);
      EXPECT_NEAR(K(i, j), second, 1e-4 * K.cwiseAbs().maxCoeff()) << i << ' ' << j;
    }
}

TEST(BeamGeometric, IsSymmetricAndLinearInTheForces) {
  const BeamData d = sample::odd();
  SectionForces a = forces(0), b = forces(L);
  a.N = b.N = -900;
  const Matrix12d K = beam_geometric(d, L, a, b);
  EXPECT_EQ((K - K.transpose()).norm(), 0);
  for (SectionForces* f : {&a, &b}) *f = {2 * f->N, 2 * f->Vy, 2 * f->Vz, 2 * f->T, 2 * f->My, 2 * f->Mz};
  EXPECT_LT((beam_geometric(d, L, a, b) - 2 * K).norm(), 1e-12 * K.norm());
}

// Rigid turning turns the end forces with the element.
TEST(BeamGeometric, RigidTurningTurnsTheForces) {
  const BeamData d = sample::odd();
  SectionForces a = forces(0), b = forces(L);
  a.N = b.N = -900;
  const Matrix12d K = beam_geometric(d, L, a, b);
  for (int i = 0; i < 3; ++i) {
    const Vector3d theta = Vector3d::Unit(i);
    Vector6d m;
    m << 0, 0, 0, theta;
    const Vector12d f = K * sample::rigid(L, m);
    const Vector3d wanted = theta.cross(Vector3d(b.N, b.Vy, b.Vz));
    EXPECT_LT((f.segment<3>(6) - wanted).norm(), 1e-9 * 900) << i;
    EXPECT_LT((f.segment<3>(0) + wanted).norm(), 1e-9 * 900) << i;
  }
}

// Przemieniecki 1968 ch. 15 (from memory): 6/5L, 1/10, 2L/15, -L/30 per unit axial force on the plain beam.
TEST(BeamGeometric, AxialForceOnThePlainBeamIsTheTextbooks) {
  BeamData d = sample::bar();
  d.section.Ay = d.section.Az = std::numeric_limits<double>::infinity();
  SectionForces f;
  f.N = 1;
  const Matrix12d K = beam_geometric(d, L, f, f);
  EXPECT_NEAR(K(1, 1), 6 / (5 * L), 1e-12);
  EXPECT_NEAR(K(1, 5), 0.1, 1e-12);
  EXPECT_NEAR(K(5, 5), 2 * L / 15, 1e-12);
  EXPECT_NEAR(K(5, 11), -L / 30, 1e-12);
  EXPECT_NEAR(K(3, 3), (d.section.Iyy + d.section.Izz) / d.section.A / L, 1e-12);
}

// Second difference of the work of a dead force on an arm turned by a rotation vector.
TEST(BeamGeometric, LoadHeightIsTheSecondDifferenceOfTheLoadsWork) {
  const Vector3d force(3, -5, 7), arm(0.2, 0.3, -0.4);
  const Matrix3d H = beam_load_height(force, arm);
  const double h = 1e-3;
  const auto potential = [&](const Vector3d& t) { return -force.dot(turn(t) * arm); };
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) {
      const Vector3d a = h * Vector3d::Unit(i), b = h * Vector3d::Unit(j);
      const double second = (potential(a + b) - potential(a - b) - potential(b - a) + potential(-a - b)) / (4 * h * h);
      EXPECT_NEAR(H(i, j), second, 1e-6);
    }
}

} // namespace
} // namespace bedbow
