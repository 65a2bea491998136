#include "solver/element/beam_shape.h"

namespace bedbow {

namespace {

using beam::Local;

// The load's own solution between clamped ends.
Local particular(const beam::Lateral& k, double length, const beam::LateralLoad& p, double x) {
  const double h = length / 2;
  const double c = x * x - h * h;
  const Eigen::Vector2d bend_q = k.flexible * p.q;
  const Eigen::Vector2d bend_m = k.flexible * (p.mean + p.mu);
  Local out;
  out.slope = bend_q * (x * c / 6) - bend_m * (c / 2);
  out.deflection = bend_q * (c * c / 24) - bend_m * (x * x * x / 6 - h * h * x / 2 - h * h * h / 3) +
                   k.shearing * (p.mean * (x + h) - p.q * (c / 2));
  return out;
}

} // namespace

Vector6d beam_motion(const BeamData& data, double length, const Vector12d& u, const BeamLineLoad& load, double s) {
  const beam::Lateral k = beam::lateral(data, length);
  const beam::LateralLoad p = beam::lateral_load(k, length, load);
  const double x = (s - 0.5) * length;
  const Local a = beam::homogeneous(k, length, beam::end_motion(k, length, u), x);
  const Local b = particular(k, length, p, x);
  const double bubble = (length * length / 4 - x * x) / 2;
  const Eigen::Vector2d slope = a.slope + b.slope;
  const double twist = (1 - s) * u(3) + s * u(9) + bubble * p.torque / (data.G * data.section.J);
  Vector6d out;
  out(0) = (1 - s) * u(0) + s * u(6) + bubble * load.force.x() / (data.E * data.section.A);
  out.segment<2>(1) = a.deflection + b.deflection - twist * k.twist_arm;
  out(3) = twist;
  out(4) = -slope(1);
  out(5) = slope(0);
  return out;
}

SectionForces beam_forces(const BeamData& data, double length, const Vector12d& u, const BeamLineLoad& load, double s) {
  const beam::Lateral k = beam::lateral(data, length);
  const beam::LateralLoad p = beam::lateral_load(k, length, load);
  const beam::EndMotion m = beam::end_motion(k, length, u);
  const double x = (s - 0.5) * length;
  const Eigen::Vector2d sway = k.sway * m.mean_sway;
  const Eigen::Vector2d shear = sway + p.mean - p.q * x;
  const Eigen::Vector2d moment =
      k.bending * m.curvature - (sway + p.mean + p.mu) * x + p.q * (x * x / 2 - length * length / 24);
  SectionForces f;
  f.N = data.E * data.section.A * (u(6) - u(0)) / length - load.force.x() * x;
  f.Vy = shear(0);
  f.Vz = shear(1);
  f.T = data.G * data.section.J * (u(9) - u(3)) / length - p.torque * x;
  f.My = -moment(1);
  f.Mz = moment(0);
  return f;
}

} // namespace bedbow
