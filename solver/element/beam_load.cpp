#include "solver/element/beam_lateral.h"

namespace bedbow {

Vector12d beam_load(const BeamData& data, double length, const BeamLineLoad& load) {
  return beam::load(beam::lateral(data, length), length, load);
}

Vector12d beam::load(const Lateral& k, double length, const BeamLineLoad& load) {
  const LateralLoad p = lateral_load(k, length, load);
  const double half = length / 2;
  // Between clamped ends: V = mean -+ q h and m = q h^2/3 -+ (mean + mu) h at x = -+h. The nodes get the
  // opposite of the reactions: from the section's +x face at node 2, and its -x face at node 1.
  const Eigen::Vector2d force_1 = p.mean + p.q * half;
  const Eigen::Vector2d force_2 = -(p.mean - p.q * half);
  const Eigen::Vector2d end = p.q * (half * half / 3);
  const Eigen::Vector2d moment_1 = end + (p.mean + p.mu) * half;
  const Eigen::Vector2d moment_2 = -(end - (p.mean + p.mu) * half);
  Vector12d f;
  f(0) = f(6) = load.force.x() * half;
  f.segment<2>(1) = force_1;
  f.segment<2>(7) = force_2;
  // The shear force passes through the shear centre; about the centroid it twists by its arm.
  f(3) = p.torque * half + k.twist_arm.dot(force_1);
  f(9) = p.torque * half + k.twist_arm.dot(force_2);
  f.segment<2>(4) = Eigen::Vector2d(-moment_1(1), moment_1(0));
  f.segment<2>(10) = Eigen::Vector2d(-moment_2(1), moment_2(0));
  return f;
}

} // namespace bedbow
