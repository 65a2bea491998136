/// \file
/// The lateral problem of the beam as one pair of equations, shared by the beam's source files.
///
/// With v = (v, w) the deflection of the shear centre, phi = (rz, -ry) the section's slope, V = (Vy, Vz) and
/// m = (Mz, -My), an unsymmetric section obeys the plane beam's equations with 2 x 2 matrices in place of scalars:
///   v' = phi + C_s V,   phi' = C_b m,   V' = -q,   m' = -V - mu,   mu = (mz, -my) the distributed moment.
/// See docs/theory/beams.md.
#pragma once

#include "solver/element/beam.h"

#include <stdexcept>
#include <string>

namespace bedbow::beam {

struct Lateral {
  Eigen::Matrix2d bending;   ///< D = E [Izz Iyz; Iyz Iyy] [N m^2]
  Eigen::Matrix2d flexible;  ///< C_b = inverse of D
  Eigen::Matrix2d shearing;  ///< C_s = diag(1 / G Ay, 1 / G Az) [1/N]
  Eigen::Matrix2d sway;      ///< S = inverse of (C_s + L^2/12 C_b): shear force per mean sway [N]
  Eigen::Vector2d twist_arm; ///< displacement of the shear centre per rx: (-z_s, y_s) [m]
};

/// Inverse of a symmetric 2 x 2 matrix.
inline Eigen::Matrix2d inverted(const Eigen::Matrix2d& a) {
  Eigen::Matrix2d out;
  out << a(1, 1), -a(0, 1), -a(0, 1), a(0, 0);
  return out * (1 / (a(0, 0) * a(1, 1) - a(0, 1) * a(0, 1))); // one division only: this is called for many elements
}

/// \param length [m]. Throws std::invalid_argument unless length > 0.
inline Lateral lateral(const BeamData& data, double length) {
  if (!(length > 0))
    throw std::invalid_argument("beam of length " + std::to_string(length) +
                                " m; the length must be greater than zero");
  const SectionProperties& p = data.section;
  Lateral out;
  out.bending << data.E * p.Izz, data.E * p.Iyz, data.E * p.Iyz, data.E * p.Iyy;
  out.flexible = inverted(out.bending);
  out.shearing << 1 / (data.G * p.Ay), 0, 0, 1 / (data.G * p.Az);
  out.sway = inverted(out.shearing + length * length / 12 * out.flexible);
  out.twist_arm = {-p.shear_centre.y(), p.shear_centre.x()};
  return out;
}

/// The ends' displacements split into parts that strain the element and means that do not. Linear maps of the 12 dofs
/// would be larger than these few sums.
struct EndMotion {
  Eigen::Vector2d deflection_1, deflection_2; ///< of the shear centre at either end
  Eigen::Vector2d slope_1, slope_2;           ///< phi at either end
  Eigen::Vector2d curvature;                  ///< (slope_2 - slope_1) / L
  Eigen::Vector2d mean_sway;                  ///< (deflection_2 - deflection_1) / L - (slope_1 + slope_2) / 2
};

inline EndMotion end_motion(const Lateral& k, double length, const Vector12d& u) {
  EndMotion m;
  m.deflection_1 = u.segment<2>(1) + u(3) * k.twist_arm;
  m.deflection_2 = u.segment<2>(7) + u(9) * k.twist_arm;
  m.slope_1 = {u(5), -u(4)};
  m.slope_2 = {u(11), -u(10)};
  m.curvature = (m.slope_2 - m.slope_1) / length;
  m.mean_sway = (m.deflection_2 - m.deflection_1) / length - (m.slope_1 + m.slope_2) / 2;
  return m;
}

/// The line load as input of the lateral and torsion problems.
struct LateralLoad {
  Eigen::Vector2d q;    ///< (qy, qz)
  Eigen::Vector2d mu;   ///< (mz, -my)
  Eigen::Vector2d mean; ///< mean shear force between clamped ends, -S C_b L^2/12 mu
  double torque = 0;    ///< about the shear centre, per length
};

inline LateralLoad lateral_load(const Lateral& k, double length, const BeamLineLoad& load) {
  LateralLoad out;
  out.q = load.force.tail<2>();
  out.mu = {load.moment.z(), -load.moment.y()};
  out.mean = -(length * length / 12) * (k.sway * (k.flexible * out.mu));
  out.torque = load.moment.x() - k.twist_arm.dot(out.q);
  return out;
}

/// As beam_load. \param k of an element of that length.
Vector12d load(const Lateral& k, double length, const BeamLineLoad& load);

} // namespace bedbow::beam
