#include "solver/element/beam_shape.h"

namespace bedbow {

namespace beam {

Shapes shapes(const BeamData& data, double length, double s) {
  const Lateral k = lateral(data, length);
  const double x = (s - 0.5) * length;
  Shapes out;
  for (int j = 0; j < 12; ++j) {
    const Vector12d u = Vector12d::Unit(j);
    const EndMotion m = end_motion(k, length, u);
    const Local a = homogeneous(k, length, m, x);
    const double twist = (1 - s) * u(3) + s * u(9);
    out.value.col(j) << (1 - s) * u(0) + s * u(6), a.deflection - twist * k.twist_arm, twist, -a.slope(1), a.slope(0);
    // v' = phi + C_s V and phi' = C_b m, with the twist's share of the centroid's displacement taken off.
    const Eigen::Vector2d shear = k.sway * m.mean_sway;
    const Eigen::Vector2d curvature = m.curvature - k.flexible * shear * x;
    const double twisting = (u(9) - u(3)) / length;
    out.slope.col(j) << (u(6) - u(0)) / length, a.slope + k.shearing * shear - twisting * k.twist_arm, twisting,
        -curvature(1), curvature(0);
  }
  return out;
}

} // namespace beam

Matrix6x12d beam_shape(const BeamData& data, double length, double s) {
  return beam::shapes(data, length, s).value;
}

} // namespace bedbow
