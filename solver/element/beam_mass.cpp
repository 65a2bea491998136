#include "solver/element/beam_shape.h"

namespace bedbow {

namespace {

// Gauss-Legendre, four points on [0, 1]: exact for the squares of cubics. Abramowitz & Stegun, table 25.4.
constexpr double gauss4_at[4] = {0.06943184420297371, 0.33000947820757187, 0.6699905217924281, 0.9305681557970263};
constexpr double gauss4_weight[4] = {0.17392742256872693, 0.32607257743127307, 0.32607257743127307,
                                     0.17392742256872693};

// Inertia of a slice, per length: mass, and rotary inertia about the centroid axes.
Matrix6d slice(const BeamData& data) {
  const SectionProperties& p = data.section;
  Matrix6d m = Matrix6d::Zero();
  m.diagonal().head<3>().setConstant(p.A);
  m(3, 3) = p.Iyy + p.Izz;
  m(4, 4) = p.Iyy;
  m(5, 5) = p.Izz;
  m(4, 5) = m(5, 4) = -p.Iyz;
  return data.density * m;
}

} // namespace

Matrix12d beam_mass(const BeamData& data, double length, bool lumped) {
  const Matrix6d m = slice(data);
  Matrix12d M = Matrix12d::Zero();
  if (lumped) {
    M.diagonal() << m.diagonal(), m.diagonal();
    return M * (length / 2);
  }
  for (int g = 0; g < 4; ++g) {
    const Matrix6x12d n = beam_shape(data, length, gauss4_at[g]);
    const Matrix6x12d inertia = m * n;
    M.noalias() += (gauss4_weight[g] * length) * n.transpose() * inertia;
  }
  M.triangularView<Eigen::StrictlyLower>() = M.transpose();
  return M;
}

} // namespace bedbow
