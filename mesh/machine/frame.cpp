#include "mesh/machine/frame.h"

#include <cmath>

namespace bedbow {

Eigen::Matrix3d apron_turn(double angle) {
  // Exact right angles stay exact: a machine at 90 deg has no stray 1e-17 in its loads.
  double s = std::sin(angle);
  double c = std::cos(angle);
  if (std::abs(s) < 1e-15) s = 0;
  if (std::abs(c) < 1e-15) c = 0;
  Eigen::Matrix3d r;
  r << 1, 0, 0, 0, c, s, 0, -s, c;
  return r;
}

} // namespace bedbow
