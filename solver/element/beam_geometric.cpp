#include "solver/element/beam_shape.h"

namespace bedbow {

namespace {

// Gauss-Legendre, three points on [0, 1]: exact to degree five, which linear forces on quadratic slopes reach.
constexpr double gauss3_at[3] = {0.1127016653792583, 0.5, 0.8872983346207417};
constexpr double gauss3_weight[3] = {5.0 / 18, 8.0 / 18, 5.0 / 18};

using Matrix9d = Eigen::Matrix<double, 9, 9>;
using Matrix9x12d = Eigen::Matrix<double, 9, 12>;

// Places in the vector d = (u' v' w' rx ry rz rx' ry' rz').
enum Part { du, dv, dw, rx, ry, rz, drx, dry, drz };

void couple(Matrix9d& Q, Part a, Part b, double value) {
  Q(a, b) += value;
  Q(b, a) += value;
}

// d' Q d / 2 is the work of the section forces (about the centroid) on the strains' second-order parts, see
// docs/theory/buckling.md: gamma_2 = -theta x u' + theta x (theta x e_x) / 2, kappa_2 = -theta x theta' / 2.
Matrix9d work_on_second_order(const SectionForces& f, double wagner) {
  Matrix9d Q = Matrix9d::Zero();
  Q(dv, dv) = Q(dw, dw) = f.N; // Green's strain for the axial force: (v'^2 + w'^2) / 2
  Q(drx, drx) = wagner;
  couple(Q, rx, dw, f.Vy);
  couple(Q, rz, du, -f.Vy);
  couple(Q, rx, ry, f.Vy / 2);
  couple(Q, rx, dv, -f.Vz);
  couple(Q, ry, du, f.Vz);
  couple(Q, rx, rz, f.Vz / 2);
  couple(Q, ry, drz, -f.T / 2);
  couple(Q, rz, dry, f.T / 2);
  couple(Q, rz, drx, -f.My / 2);
  couple(Q, rx, drz, f.My / 2);
  couple(Q, rx, dry, -f.Mz / 2);
  couple(Q, ry, drx, f.Mz / 2);
  return Q;
}

// Between the ends: linear, and the moments' parabola due to a varying shear force. Torque about the centroid.
SectionForces between(const SectionForces& a, const SectionForces& b, const Eigen::Vector2d& shear_centre,
                      double length, double s) {
  const auto line = [s](double from, double to) { return (1 - s) * from + s * to; };
  const double bubble = length * s * (1 - s) / 2;
  SectionForces f;
  f.N = line(a.N, b.N);
  f.Vy = line(a.Vy, b.Vy);
  f.Vz = line(a.Vz, b.Vz);
  f.T = line(a.T, b.T) + shear_centre.x() * f.Vz - shear_centre.y() * f.Vy;
  f.My = line(a.My, b.My) + bubble * (a.Vz - b.Vz);
  f.Mz = line(a.Mz, b.Mz) - bubble * (a.Vy - b.Vy);
  return f;
}

} // namespace

Matrix12d beam_geometric(const BeamData& data, double length, const SectionForces& at_1, const SectionForces& at_2) {
  const SectionProperties& p = data.section;
  Matrix12d K = Matrix12d::Zero();
  for (int g = 0; g < 3; ++g) {
    const beam::Shapes n = beam::shapes(data, length, gauss3_at[g]);
    Matrix9x12d B;
    B << n.slope.topRows<3>(), n.value.bottomRows<3>(), n.slope.bottomRows<3>();
    const SectionForces f = between(at_1, at_2, p.shear_centre, length, gauss3_at[g]);
    const Matrix9x12d QB = work_on_second_order(f, f.N * (p.Iyy + p.Izz) / p.A) * B;
    K.noalias() += (gauss3_weight[g] * length) * B.transpose() * QB;
  }
  K.triangularView<Eigen::StrictlyLower>() = K.transpose();
  return K;
}

Eigen::Matrix3d beam_load_height(const Eigen::Vector3d& force, const Eigen::Vector3d& arm) {
  const Eigen::Matrix3d outer = force * arm.transpose();
  return force.dot(arm) * Eigen::Matrix3d::Identity() - (outer + outer.transpose()) / 2;
}

} // namespace bedbow
