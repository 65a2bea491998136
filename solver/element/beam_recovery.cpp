#include "solver/element/beam_field.h"
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

BeamField::BeamField(const BeamData& data, const beam::Lateral& k, double length, const Vector12d& u,
                     const BeamLineLoad& load)
    : data_(data)
    , k_(k)
    , length_(length)
    , u_(u)
    , load_(load)
    , p_(beam::lateral_load(k, length, load))
    , ends_(beam::end_motion(k, length, u)) {}

Vector6d BeamField::motion(double s) const {
  const double x = (s - 0.5) * length_;
  const Local a = beam::homogeneous(k_, length_, ends_, x);
  const Local b = particular(k_, length_, p_, x);
  const double bubble = (length_ * length_ / 4 - x * x) / 2;
  const Eigen::Vector2d slope = a.slope + b.slope;
  const double twist = (1 - s) * u_(3) + s * u_(9) + bubble * p_.torque / (data_.G * data_.section.J);
  Vector6d out;
  out(0) = (1 - s) * u_(0) + s * u_(6) + bubble * load_.force.x() / (data_.E * data_.section.A);
  out.segment<2>(1) = a.deflection + b.deflection - twist * k_.twist_arm;
  out(3) = twist;
  out(4) = -slope(1);
  out(5) = slope(0);
  return out;
}

SectionForces BeamField::forces(double s) const {
  const double x = (s - 0.5) * length_;
  const Eigen::Vector2d sway = k_.sway * ends_.mean_sway;
  const Eigen::Vector2d shear = sway + p_.mean - p_.q * x;
  const Eigen::Vector2d moment =
      k_.bending * ends_.curvature - (sway + p_.mean + p_.mu) * x + p_.q * (x * x / 2 - length_ * length_ / 24);
  SectionForces f;
  f.N = data_.E * data_.section.A * (u_(6) - u_(0)) / length_ - load_.force.x() * x;
  f.Vy = shear(0);
  f.Vz = shear(1);
  f.T = data_.G * data_.section.J * (u_(9) - u_(3)) / length_ - p_.torque * x;
  f.My = -moment(1);
  f.Mz = moment(0);
  return f;
}

Vector6d beam_motion(const BeamData& data, double length, const Vector12d& u, const BeamLineLoad& load, double s) {
  const beam::Lateral k = beam::lateral(data, length);
  return BeamField(data, k, length, u, load).motion(s);
}

SectionForces beam_forces(const BeamData& data, double length, const Vector12d& u, const BeamLineLoad& load, double s) {
  const beam::Lateral k = beam::lateral(data, length);
  return BeamField(data, k, length, u, load).forces(s);
}

} // namespace bedbow
