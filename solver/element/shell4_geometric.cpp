#include "solver/element/shell4_frame.h"

namespace bedbow {

Matrix24d shell_geometric(const Corners& corners, const ShellData&, const std::array<Eigen::Vector3d, 4>& n) {
  const shell::Quad q = shell::quad_of(corners);
  Matrix24d k = Matrix24d::Zero();
  for (std::size_t p = 0; p < 4; ++p) {
    const shell::Shape4 s = shell::shape4(q, shell::gauss2 * shell::corner_xi[p], shell::gauss2 * shell::corner_eta[p]);
    for (std::size_t i = 0; i < 4; ++i)
      for (std::size_t j = 0; j < 4; ++j) {
        const double g = n[p][0] * s.dx[i] * s.dx[j] + n[p][1] * s.dy[i] * s.dy[j] +
                         n[p][2] * (s.dx[i] * s.dy[j] + s.dy[i] * s.dx[j]);
        for (int c = 0; c < 3; ++c) k(6 * static_cast<int>(i) + c, 6 * static_cast<int>(j) + c) += g * s.det;
      }
  }
  return shell::to_global(q, k);
}

} // namespace bedbow
