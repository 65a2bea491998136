#include "mesh/machine/holds.h"

#include <algorithm>

namespace bedbow {

bool on_hold(const Hold& hold, const Eigen::Vector3d& at) {
  constexpr double near = 1e-6; // [m]
  const Eigen::Vector3d d = hold.to - hold.from;
  const double n = d.squaredNorm();
  const double t = n > 0 ? std::clamp((at - hold.from).dot(d) / n, 0.0, 1.0) : 0.0;
  return (at - hold.from - t * d).norm() <= near;
}

} // namespace bedbow
