#include "solver/linear/dense.h"

#include "tests/unit/element/shell4_samples.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

using namespace shell_samples;

TEST(Shell4Stiffness, IsSymmetricToTheBit) {
  for (const Corners& c : all()) {
    const Matrix24d k = shell_stiffness(c, steel());
    EXPECT_EQ((k - k.transpose()).cwiseAbs().maxCoeff(), 0);
  }
}

TEST(Shell4Stiffness, HasSixZeroEigenvaluesAndNoMore) {
  for (const Corners& c : all()) {
    const Eigen::VectorXd v = symmetric_eigenvalues(shell_stiffness(c, steel()));
    EXPECT_LT(std::abs(v[0]), 1e-12 * v[23]);
    EXPECT_LT(std::abs(v[5]), 1e-12 * v[23]);
    EXPECT_GT(v[6], 1e-8 * v[23]);
  }
}

TEST(Shell4Stiffness, ResistsNoRigidMovement) {
  for (const Corners& c : all()) {
    const Matrix24d k = shell_stiffness(c, steel());
    EXPECT_LT((k * rigid(c)).cwiseAbs().maxCoeff(), 1e-12 * k.cwiseAbs().maxCoeff());
  }
}

TEST(Shell4Stiffness, TurnsWithTheElement) {
  const Eigen::Matrix3d r = skew_turn();
  for (const Corners& c : flat()) {
    const Matrix24d a = shell_stiffness(c, steel());
    Matrix24d turn = Matrix24d::Zero();
    for (int i = 0; i < 8; ++i) turn.block<3, 3>(3 * i, 3 * i) = r;
    const Matrix24d b = turn.transpose() * shell_stiffness(turned(c, r), steel()) * turn;
    EXPECT_LT((a - b).cwiseAbs().maxCoeff(), 1e-12 * a.cwiseAbs().maxCoeff());
  }
}

TEST(Shell4Stiffness, IsTheSameFromWhicheverCornerItIsNumbered) {
  for (const Corners& c : flat()) {
    const Matrix24d a = shell_stiffness(c, steel());
    const Matrix24d b = shell_stiffness({c[1], c[2], c[3], c[0]}, steel());
    for (int i = 0; i < 24; ++i)
      for (int j = 0; j < 24; ++j) EXPECT_NEAR(a((i + 6) % 24, (j + 6) % 24), b(i, j), 1e-11 * a.cwiseAbs().maxCoeff());
  }
}

// Constant membrane strain, curvature and twist give just the plate's own law at every Gauss point and corner.
TEST(Shell4Resultants, ConstantStrainGivesTheLawOfThePlate) {
  const ShellData d = steel();
  const double C = d.E * d.thickness / (1 - d.nu * d.nu), D = C * d.thickness * d.thickness / 12;
  const double exx = 1e-4, eyy = -3e-5, gxy = 5e-5, kx = 2e-3, ky = -1e-3, kxy = 7e-4; // w = -(kx x^2 + ...)/2
  for (const Corners& c : flat()) {
    const Vector24d u = nodal(c, [&](const Eigen::Vector3d& p) {
      Vector6d m;
      const double x = p.x(), y = p.y();
      // theta_x = dw/dy, theta_y = -dw/dx for w without shear; m_xx > 0 stretches the upper face: w = -k x^2/2.
      m << exx * x + gxy / 2 * y, eyy * y + gxy / 2 * x, -(kx * x * x + ky * y * y + kxy * x * y) / 2,
          -(ky * y + kxy * x / 2), kx * x + kxy * y / 2, 0;
      return m;
    });
    const Eigen::Matrix3d axes = shell_axes(c);
    const double cs = axes(0, 0), sn = axes(0, 1); // element's x in the plate's axes
    for (const auto& r : shell_corner_resultants(c, d, u)) {
      const auto back = [&](const Eigen::Vector3d& t) { // into the plate's axes
        return Eigen::Vector3d(cs * cs * t[0] + sn * sn * t[1] - 2 * cs * sn * t[2],
                               sn * sn * t[0] + cs * cs * t[1] + 2 * cs * sn * t[2],
                               cs * sn * (t[0] - t[1]) + (cs * cs - sn * sn) * t[2]);
      };
      const Eigen::Vector3d n(C * (exx + d.nu * eyy), C * (eyy + d.nu * exx), C * (1 - d.nu) / 2 * gxy);
      const Eigen::Vector3d m(D * (kx + d.nu * ky), D * (ky + d.nu * kx), D * (1 - d.nu) / 2 * kxy);
      EXPECT_LT((back(r.n) - n).norm(), 1e-10 * n.norm());
      EXPECT_LT((back(r.m) - m).norm(), 1e-10 * m.norm());
      EXPECT_LT(r.q.norm(), 1e-7 * m.norm() / 0.02);
    }
  }
}

// Pure in-plane bending of a rectangle: u = k x y / E, v = -k (x^2 + nu y^2) / 2E; stress s_xx = k y, energy I k^2 /
// 2E.
TEST(Shell4Stiffness, BendsARectangleInItsPlaneExactly) {
  const ShellData d = steel();
  for (const double aspect : {1.0, 5.0, 50.0}) {
    const double b = 0.01, a = aspect * b, k = 1e9;
    const Corners c{Eigen::Vector3d(-a, -b, 0), Eigen::Vector3d(a, -b, 0), Eigen::Vector3d(a, b, 0),
                    Eigen::Vector3d(-a, b, 0)};
    const Vector24d u = nodal(c, [&](const Eigen::Vector3d& p) {
      Vector6d m = Vector6d::Zero();
      m[0] = k * p.x() * p.y() / d.E;
      m[1] = -k * (p.x() * p.x() + d.nu * p.y() * p.y()) / (2 * d.E);
      m[5] = -k * p.x() / d.E;
      return m;
    });
    const double energy = u.dot(shell_stiffness(c, d) * u) / 2;
    const double exact = k * k / (2 * d.E) * d.thickness * 2 * a * std::pow(2 * b, 3) / 12;
    EXPECT_NEAR(energy / exact, 1, 1e-13 * std::pow(std::max(aspect, 5.0), 3)); // stiff against soft: rounding
    const auto r = shell_gauss_resultants(c, d, u);
    EXPECT_NEAR(r[2].n[0] / d.thickness, k * b / std::sqrt(3), 1e-9 * k * b);
  }
}

TEST(Shell4Mass, CarriesTheWeightAndTheInertiaOfThePlate) {
  const ShellData d = steel();
  for (const bool lumped : {false, true})
    for (const Corners& c : all()) {
      const Matrix24d m = shell_mass(c, d, lumped);
      const double weight = d.density * d.thickness * (c[2] - c[0]).cross(c[3] - c[1]).norm() / 2;
      const auto r = rigid(c);
      for (int k = 0; k < 3; ++k) EXPECT_NEAR(r.col(k).dot(m * r.col(k)), weight, 1e-12 * weight);
      EXPECT_EQ((m - m.transpose()).cwiseAbs().maxCoeff(), 0);
      if (lumped) {
        EXPECT_EQ((m - Matrix24d(m.diagonal().asDiagonal())).cwiseAbs().maxCoeff(), 0);
      }
    }
}

// A square plate of side a about its middle: about x, m (a^2 + t^2)/12; the element's bilinear movement is exact for
// it.
TEST(Shell4Mass, TurnsLikeASquarePlate) {
  const ShellData d = steel();
  const double a = 0.02, weight = d.density * d.thickness * a * a;
  Corners c = flat()[0];
  for (auto& p : c) p -= Eigen::Vector3d(a / 2, a / 2, 0);
  const auto r = rigid(c);
  const Matrix24d m = shell_mass(c, d);
  EXPECT_NEAR(r.col(3).dot(m * r.col(3)), weight * (a * a + d.thickness * d.thickness) / 12, 1e-12 * weight * a * a);
  // About its normal the drilling rotation's stand-in adds a thousandth of the rotary inertia.
  EXPECT_NEAR(r.col(5).dot(m * r.col(5)), weight * a * a / 6, 1e-3 * weight * d.thickness * d.thickness);
}

TEST(Shell4Load, MakesUpTheTraction) {
  const Eigen::Vector3d t(3e3, -1e3, 5e3);
  for (const Corners& c : all()) {
    const Vector24d f = shell_load(c, t);
    const double area = (c[2] - c[0]).cross(c[3] - c[1]).norm() / 2;
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for (int i = 0; i < 4; ++i) sum += f.segment<3>(6 * i);
    EXPECT_LT((sum - area * t).norm(), 1e-12 * area * t.norm());
  }
}

// Second differences of the work of n on the Green-Lagrange strain of the bilinear movement, by 4 x 4 Gauss points. On
// parallelograms the element's 2 x 2 points are exact, too.
TEST(Shell4Geometric, IsTheSecondDifferenceOfTheStressesWork) {
  const Eigen::Vector3d n(3e5, -1e5, 2e5);
  Eigen::Matrix2d N;
  N << n[0], n[2], n[2], n[1];
  constexpr double at[4] = {-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526};
  constexpr double weight[4] = {0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538};
  for (const std::size_t shape : {0, 1, 3}) {
    const Corners c = flat()[shape];
    const Vector24d u = Vector24d::Random();
    const Matrix24d k = shell_geometric(c, steel(), {n, n, n, n});
    const Eigen::Matrix3d axes = shell_axes(c);
    double work = 0; // integral of N : (grad u)' (grad u) / 2, the quadratic part of N : E
    for (int p = 0; p < 16; ++p) {
      const double xi = at[p % 4], eta = at[p / 4];
      Eigen::Matrix2d jacobian = Eigen::Matrix2d::Zero();
      Eigen::Matrix<double, 3, 2> by_xi = Eigen::Matrix<double, 3, 2>::Zero();
      constexpr double sx[4] = {-1, 1, 1, -1}, sy[4] = {-1, -1, 1, 1};
      for (std::size_t i = 0; i < 4; ++i) {
        const Eigen::RowVector2d d(sx[i] * (1 + sy[i] * eta) / 4, sy[i] * (1 + sx[i] * xi) / 4);
        jacobian += Eigen::Vector2d((axes * c[i]).head<2>()) * d;
        by_xi += u.segment<3>(6 * static_cast<int>(i)) * d;
      }
      const Eigen::Matrix<double, 3, 2> gradient = by_xi * jacobian.inverse();
      work += weight[p % 4] * weight[p / 4] * jacobian.determinant() * (gradient * N * gradient.transpose()).trace();
    }
    EXPECT_NEAR(u.dot(k * u), work, 1e-9 * std::abs(work) + 1e-9);
  }
}

TEST(Shell4, SaysWhatIsWrongWithItsShape) {
  Corners folded = flat()[0];
  std::swap(folded[1], folded[2]);
  EXPECT_THROW(shell_stiffness(folded, steel()), std::invalid_argument);
  ShellData thin = steel();
  thin.thickness = 0;
  EXPECT_THROW(shell_stiffness(flat()[0], thin), std::invalid_argument);
}

} // namespace
} // namespace bedbow
