// Single-span beams, each as one element: the element is exact, so one is enough.
#include "solver/element/beam.h"
#include "solver/linear/dense.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/sources.h"
#include <gtest/gtest.h>

#include <vector>

namespace bedbow::verification {
namespace {

constexpr double bar_length = 1.0, q = 10e3, point_force = 1000;
const std::vector<int> held_root = {0, 1, 2, 3, 4, 5};

BeamData bar() {
  const double b = 0.02, h = 0.06;
  BeamData d;
  d.E = 210e9;
  d.G = 80769.2e6;
  d.section.A = b * h;
  d.section.Iyy = b * h * h * h / 12;
  d.section.Izz = h * b * b * b / 12;
  d.section.J = 0.26332 * h * b * b * b;
  d.section.Ay = d.section.Az = 0.8496732 * b * h;
  return d;
}

BeamLineLoad udl() {
  BeamLineLoad load;
  load.force = {0, 0, q};
  return load;
}

Eigen::VectorXd solve(Eigen::MatrixXd K, Eigen::VectorXd f, const std::vector<int>& held) {
  for (const int i : held) {
    K.row(i).setZero();
    K.col(i).setZero();
    K(i, i) = 1;
    f(i) = 0;
  }
  return solve_dense(K, f);
}

// Deflection in mm at s of one element under the line load with some dofs held.
double loaded(const std::vector<int>& held, double s) {
  const Vector12d u = solve(beam_stiffness(bar(), bar_length), beam_load(bar(), bar_length, udl()), held);
  return 1e3 * beam_motion(bar(), bar_length, u, udl(), s)(2);
}

// Deflection in mm under a force at mid-span, which needs a node there.
double mid_force(const std::vector<int>& held) {
  Eigen::MatrixXd K = Eigen::MatrixXd::Zero(18, 18);
  K.topLeftCorner(12, 12) += beam_stiffness(bar(), bar_length / 2);
  K.bottomRightCorner(12, 12) += beam_stiffness(bar(), bar_length / 2);
  Eigen::VectorXd f = Eigen::VectorXd::Zero(18);
  f(8) = point_force;
  return 1e3 * solve(K, f, held)(8);
}

constexpr double printed = 1e-6; // the references have seven digits

TEST(RoarkTable81, SimplySupported) {
  record("A1", roark_beam_table, "w mid, uniform load", loaded({0, 1, 2, 3, 5, 7, 8}, 0.5), 1.722332 + 0.0151786,
         printed, "mm");
  record("A2", roark_beam_table, "w mid, mid force", mid_force({0, 1, 2, 3, 13, 14}), 0.2755732 + 0.00303571, printed,
         "mm");
}

TEST(RoarkTable81, ClampedAtBothEnds) {
  record("A3", roark_beam_table, "w mid, uniform load", loaded({0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, 0.5),
         0.3444665 + 0.0151786, printed, "mm");
  record("A4", roark_beam_table, "w mid, mid force", mid_force({0, 1, 2, 3, 4, 5, 12, 13, 14, 15, 16, 17}),
         0.0688933 + 0.00303571, printed, "mm");
}

TEST(RoarkTable81, Cantilever) {
  Vector12d f = Vector12d::Zero();
  f(8) = point_force;
  record("A5", cantilever_tables, "w tip, tip force", 1e3 * solve(beam_stiffness(bar(), bar_length), f, held_root)(8),
         4.409171 + 0.0121429, printed, "mm");
  record("A6", "that of A5 summed over the length: q l^4/(8 E I) + q l^2/(2 kappa G A)", "w tip, uniform load",
         loaded(held_root, 1), 16.534392 + 0.0607143, printed, "mm");
}

// The reference leaves shear out, so the bar does, too.
TEST(RoarkTable81, ClampedAndPinned) {
  BeamData d = bar();
  d.section.Ay = d.section.Az = std::numeric_limits<double>::infinity();
  std::vector<int> held = held_root;
  held.insert(held.end(), {7, 8});
  const Vector12d u = solve(beam_stiffness(d, bar_length), beam_load(d, bar_length, udl()), held);
  record("A7", "half of two equal spans, Lindeburg, Civil Engineering Reference Manual, in engineersedge.com",
         "w at 0.4215 L from the pin", 1e3 * beam_motion(d, bar_length, u, udl(), 1 - 0.4215)(2), 0.716420, 3e-6,
         "mm"); // the reference's 184.634 has six digits
}

} // namespace
} // namespace bedbow::verification
