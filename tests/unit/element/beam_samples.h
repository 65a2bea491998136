/// \file
/// Beams for the element tests: a plain bar and the worst section we can think of, and a solver for a handful of dofs.
#pragma once

#include "solver/element/beam.h"
#include "solver/linear/dense.h"

#include <Eigen/Geometry>

#include <initializer_list>
#include <vector>

namespace bedbow::sample {

/// The bar of rows A1-A8: 20 x 60, steel, Cowper's coefficient. Bending about y is about the strong axis.
inline BeamData bar() {
  const double b = 0.02, h = 0.06, nu = 0.3, kappa = 10 * (1 + nu) / (12 + 11 * nu);
  BeamData d;
  d.E = 210e9;
  d.G = d.E / (2 * (1 + nu));
  d.density = 7850;
  d.section.A = b * h;
  d.section.Iyy = b * h * h * h / 12;
  d.section.Izz = h * b * b * b / 12;
  d.section.J = 0.26332 * h * b * b * b;
  d.section.Ay = d.section.Az = kappa * b * h;
  return d;
}

/// Invented unsymmetric section, nothing zero: Iyz, both shear areas, both offsets of the shear centre.
inline BeamData odd() {
  BeamData d = bar();
  d.section.Iyz = 1.1e-7;
  d.section.Ay = 0.7e-3;
  d.section.Az = 0.5e-3;
  d.section.shear_centre = {-0.013, 0.021};
  return d;
}

/// Some rotation that is aligned with nothing.
inline Eigen::Matrix3d skew_axes() {
  return Eigen::AngleAxisd(0.8, Eigen::Vector3d(1, -2, 0.7).normalized()).toRotationMatrix();
}

/// Solves K u = f with some dofs held at zero.
inline Eigen::VectorXd solve_held(const Eigen::MatrixXd& K, const Eigen::VectorXd& f, const std::vector<int>& held) {
  Eigen::MatrixXd A = K;
  Eigen::VectorXd b = f;
  for (const int i : held) {
    A.row(i).setZero();
    A.col(i).setZero();
    A(i, i) = 1;
    b(i) = 0;
  }
  return solve_dense(A, b);
}

/// Movement of both nodes when the beam moves as a rigid body. \param m translation and rotation of node 1.
inline Vector12d rigid(double length, const Vector6d& m) {
  Vector12d u;
  u << m, m(0), m(1) + length * m(5), m(2) - length * m(4), m(3), m(4), m(5);
  return u;
}

} // namespace bedbow::sample
