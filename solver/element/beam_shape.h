/// \file
/// The exact unloaded solution inside the beam, from which its shape functions are read.
#pragma once

#include "solver/element/beam_lateral.h"

namespace bedbow::beam {

/// Lateral state at a place: deflection of the shear centre and slope phi.
struct Local {
  Eigen::Vector2d deflection, slope;
};

/// Unloaded element: constant shear force S s, linear moment. \param x from mid-length [m].
inline Local homogeneous(const Lateral& k, double length, const EndMotion& m, double x) {
  const double half = length / 2;
  const Eigen::Vector2d shear = k.sway * m.mean_sway;
  const Eigen::Vector2d bent = k.flexible * shear;
  const Eigen::Vector2d mid_slope = (m.slope_1 + m.slope_2) / 2 + bent * (half * half / 2);
  const Eigen::Vector2d mid = (m.deflection_1 + m.deflection_2) / 2 - m.curvature * (half * half / 2);
  Local out;
  out.slope = mid_slope + m.curvature * x - bent * (x * x / 2);
  out.deflection = mid + (mid_slope + k.shearing * shear) * x + m.curvature * (x * x / 2) - bent * (x * x * x / 6);
  return out;
}

/// Shape functions and their slopes along x.
struct Shapes {
  Matrix6x12d value; ///< (u, theta) of the centroid per nodal displacement
  Matrix6x12d slope; ///< d/dx of the same [1/m]
};

/// \param s in [0, 1].
Shapes shapes(const BeamData& data, double length, double s);

} // namespace bedbow::beam
