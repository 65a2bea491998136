#include "solver/element/shell4_frame.h"

namespace bedbow {

namespace {

/// Rotary inertia of the drilling rotation as a fraction of the others': the in-plane inertia is already in u and v;
/// this small value only keeps the matrix positive definite.
constexpr double drilling_share = 1e-3;

/// Integrals of N_i N_j over the element.
std::array<std::array<double, 4>, 4> products(const shell::Quad& q) {
  std::array<std::array<double, 4>, 4> out{};
  for (std::size_t p = 0; p < 4; ++p) {
    const shell::Shape4 s = shell::shape4(q, shell::gauss2 * shell::corner_xi[p], shell::gauss2 * shell::corner_eta[p]);
    for (std::size_t i = 0; i < 4; ++i)
      for (std::size_t j = 0; j < 4; ++j) out[i][j] += s.n[i] * s.n[j] * s.det;
  }
  return out;
}

} // namespace

Matrix24d shell_mass(const Corners& corners, const ShellData& data, bool lumped) {
  const shell::Quad q = shell::quad_of(corners);
  const auto nn = products(q);
  const double per_area = data.density * data.thickness;
  const double rotary = per_area * data.thickness * data.thickness / 12;
  const double of_dof[6] = {per_area, per_area, per_area, rotary, rotary, drilling_share * rotary};
  Matrix24d m = Matrix24d::Zero();
  if (lumped) {
    for (std::size_t i = 0; i < 4; ++i) {
      const double share = nn[i][0] + nn[i][1] + nn[i][2] + nn[i][3];
      const int at = 6 * static_cast<int>(i);
      for (int k = 0; k < 3; ++k) {
        m(at + k, at + k) = share * per_area;
        // Equal about all axes, so that the matrix stays diagonal in global axes.
        m(at + 3 + k, at + 3 + k) = share * rotary;
      }
    }
    return m;
  }
  for (int i = 0; i < 4; ++i)
    for (int j = 0; j < 4; ++j)
      for (int k = 0; k < 6; ++k) m(6 * i + k, 6 * j + k) = nn[i][j] * of_dof[k];
  return shell::to_global(q, m);
}

Vector24d shell_load(const Corners& corners, const Eigen::Vector3d& traction) {
  const shell::Quad q = shell::quad_of(corners);
  const auto nn = products(q);
  Vector24d f = Vector24d::Zero();
  for (std::size_t i = 0; i < 4; ++i)
    f.segment<3>(6 * static_cast<int>(i)) = (nn[i][0] + nn[i][1] + nn[i][2] + nn[i][3]) * traction;
  return f;
}

} // namespace bedbow
