#include "tests/unit/element/beam_samples.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

struct Loaded {
  BeamData data = sample::odd();
  double L = 0.6;
  BeamLineLoad load;
  Vector12d u;
  Loaded() {
    load.force = {300, -800, 1500};
    load.moment = {40, -25, 60};
    u << 1e-5, -2e-4, 3e-4, 1e-3, -2e-3, 5e-4, 4e-5, 1e-4, -2e-4, -3e-3, 1e-3, 7e-4;
  }
  [[nodiscard]] SectionForces forces(double s) const { return beam_forces(data, L, u, load, s); }
  [[nodiscard]] Vector6d motion(double s) const { return beam_motion(data, L, u, load, s); }
};

// The +x face at node 2 and the -x face at node 1 carry K u - f; torsion is about the shear centre.
TEST(BeamRecovery, EndForcesBalanceTheNodes) {
  const Loaded b;
  const Vector12d r = beam_stiffness(b.data, b.L) * b.u - beam_load(b.data, b.L, b.load);
  const Eigen::Vector2d sc = b.data.section.shear_centre;
  for (const int end : {0, 1}) {
    const SectionForces f = b.forces(end);
    const double sign = end == 0 ? -1 : 1;
    Vector6d node;
    node << f.N, f.Vy, f.Vz, f.T + sc.x() * f.Vz - sc.y() * f.Vy, f.My, f.Mz;
    EXPECT_LT((sign * node - (end == 0 ? r.head<6>() : r.tail<6>())).cwiseAbs().maxCoeff(),
              1e-10 * r.cwiseAbs().maxCoeff());
  }
}

TEST(BeamRecovery, MotionMeetsTheNodes) {
  const Loaded b;
  EXPECT_LT((b.motion(0) - b.u.head<6>()).cwiseAbs().maxCoeff(), 1e-15);
  EXPECT_LT((b.motion(1) - b.u.tail<6>()).cwiseAbs().maxCoeff(), 1e-15);
}

// The differential equations themselves, by central differences inside the element.
TEST(BeamRecovery, ForcesAreInEquilibriumAlongTheLine) {
  const Loaded b;
  const double h = 1e-3;
  for (const double s : {0.1, 0.37, 0.8}) {
    const SectionForces a = b.forces(s - h), f = b.forces(s), c = b.forces(s + h);
    const double dx = 2 * h * b.L;
    EXPECT_NEAR((c.N - a.N) / dx, -b.load.force.x(), 1e-6);
    EXPECT_NEAR((c.Vy - a.Vy) / dx, -b.load.force.y(), 1e-6);
    EXPECT_NEAR((c.Vz - a.Vz) / dx, -b.load.force.z(), 1e-6);
    EXPECT_NEAR((c.My - a.My) / dx, f.Vz - b.load.moment.y(), 1e-6);
    EXPECT_NEAR((c.Mz - a.Mz) / dx, -f.Vy - b.load.moment.z(), 1e-6);
    const Eigen::Vector2d sc = b.data.section.shear_centre;
    const double torque = b.load.moment.x() - sc.x() * b.load.force.z() + sc.y() * b.load.force.y();
    EXPECT_NEAR((c.T - a.T) / dx, -torque, 1e-6);
  }
}

TEST(BeamRecovery, ForcesFollowFromTheMotion) {
  const Loaded b;
  const SectionProperties& p = b.data.section;
  const double h = 2e-5;
  for (const double s : {0.2, 0.5, 0.9}) {
    const Vector6d d = (b.motion(s + h) - b.motion(s - h)) / (2 * h * b.L);
    const Vector6d m = b.motion(s);
    const SectionForces f = b.forces(s);
    const double scale = 1e-6;
    EXPECT_NEAR(f.N, b.data.E * p.A * d(0), scale * std::abs(f.N));
    EXPECT_NEAR(f.T, b.data.G * p.J * d(3), scale * std::abs(f.T));
    EXPECT_NEAR(f.My, b.data.E * (p.Iyy * d(4) - p.Iyz * d(5)), scale * std::abs(f.My));
    EXPECT_NEAR(f.Mz, b.data.E * (p.Izz * d(5) - p.Iyz * d(4)), scale * std::abs(f.Mz));
    EXPECT_NEAR(f.Vy, b.data.G * p.Ay * (d(1) - p.shear_centre.y() * d(3) - m(5)), 1e-5 * std::abs(f.Vy));
    EXPECT_NEAR(f.Vz, b.data.G * p.Az * (d(2) + p.shear_centre.x() * d(3) + m(4)), 1e-5 * std::abs(f.Vz));
  }
}

// A node in the middle of a loaded span must find what the single element says there.
TEST(BeamRecovery, OneElementIsAsGoodAsTwo) {
  const Loaded b;
  const Matrix12d K = beam_stiffness(b.data, b.L / 2);
  const Vector12d f = beam_load(b.data, b.L / 2, b.load);
  const Vector6d mid = solve_dense(K.bottomRightCorner<6, 6>() + K.topLeftCorner<6, 6>(),
                                   f.tail<6>() + f.head<6>() - K.bottomLeftCorner<6, 6>() * b.u.head<6>() -
                                       K.topRightCorner<6, 6>() * b.u.tail<6>());
  EXPECT_LT((mid - b.motion(0.5)).cwiseAbs().maxCoeff(), 1e-12 * mid.cwiseAbs().maxCoeff());
}

TEST(BeamRecovery, ShapeIsTheMotionWithoutLoad) {
  Loaded b;
  b.load = {};
  for (const double s : {0.0, 0.3, 1.0})
    EXPECT_LT((beam_shape(b.data, b.L, s) * b.u - b.motion(s)).cwiseAbs().maxCoeff(), 1e-15);
}

} // namespace
} // namespace bedbow
