#include "solver/element/shell4_bending.h"
#include "solver/element/shell4_membrane.h"

#include <stdexcept>
#include <string>

namespace bedbow {

namespace {

void check(const ShellData& d) {
  if (!(d.E > 0) || !(d.thickness > 0) || !(d.nu > -1 && d.nu <= 0.5))
    throw std::invalid_argument("shell with E = " + std::to_string(d.E) + " Pa, nu = " + std::to_string(d.nu) +
                                ", thickness " + std::to_string(d.thickness) +
                                " m; E and thickness must be greater than zero and nu between -1 and 0.5");
}

} // namespace

Matrix24d shell_stiffness(const Corners& corners, const ShellData& data) {
  check(data);
  const shell::Quad q = shell::quad_of(corners);
  Matrix24d k = Matrix24d::Zero();
  shell::add_membrane_stiffness(shell::make_membrane(q, data), q.area, k);
  shell::add_bending_stiffness(q, data, k);
  return shell::to_global(q, k);
}

std::array<ShellResultants, 4> shell_gauss_resultants(const Corners& corners, const ShellData& data,
                                                      const Vector24d& u) {
  const shell::Quad q = shell::quad_of(corners);
  const Vector24d local = shell::to_local(q, u);
  auto out = shell::bending_resultants(q, data, local);
  const auto n = shell::membrane_resultants(shell::make_membrane(q, data), q, local);
  for (std::size_t p = 0; p < 4; ++p) out[p].n = n[p];
  return out;
}

std::array<ShellResultants, 4> shell_corner_resultants(const Corners& corners, const ShellData& data,
                                                       const Vector24d& u) {
  const auto gauss = shell_gauss_resultants(corners, data, u);
  std::array<ShellResultants, 4> out;
  const double far = 1 / shell::gauss2; // of a corner, with the Gauss points at +-1
  for (std::size_t c = 0; c < 4; ++c) {
    out[c] = {Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(), Eigen::Vector2d::Zero()};
    for (std::size_t p = 0; p < 4; ++p) {
      const double w = (1 + shell::corner_xi[c] * shell::corner_xi[p] * far) *
                       (1 + shell::corner_eta[c] * shell::corner_eta[p] * far) / 4;
      out[c].n += w * gauss[p].n;
      out[c].m += w * gauss[p].m;
      out[c].q += w * gauss[p].q;
    }
  }
  return out;
}

} // namespace bedbow
