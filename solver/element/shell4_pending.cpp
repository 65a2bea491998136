// Until the shell element stands, plates are refused. This file goes when shell4 comes.
#include "solver/element/shell4.h"

#include <stdexcept>

namespace bedbow {

namespace {
[[noreturn]] void refuse() {
  throw std::invalid_argument("plates and panels can't be solved yet: use beam bars and members");
}
} // namespace

Eigen::Matrix3d shell_axes(const Corners&) {
  refuse();
}
Matrix24d shell_stiffness(const Corners&, const ShellData&) {
  refuse();
}
Vector24d shell_load(const Corners&, const Eigen::Vector3d&) {
  refuse();
}
std::array<ShellResultants, 4> shell_corner_resultants(const Corners&, const ShellData&, const Vector24d&) {
  refuse();
}

} // namespace bedbow
