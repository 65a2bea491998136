#include "solver/findings/surface_stress.h"

#include "solver/findings/shell_patches.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bedbow {

namespace {

double von_mises(double x, double y, double xy, double xz, double yz) {
  return std::sqrt(x * x - x * y + y * y + 3 * (xy * xy + xz * xz + yz * yz));
}

std::array<double, 2> principal(const Eigen::Vector3d& s) {
  const double centre = (s[0] + s[1]) / 2;
  const double radius = std::hypot((s[0] - s[1]) / 2, s[2]);
  return {centre + radius, centre - radius};
}

struct Average {
  ShellResultants sum{Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(), Eigen::Vector2d::Zero()};
  int count = 0;
  void add(const ShellResultants& r) {
    sum.n += r.n;
    sum.m += r.m;
    sum.q += r.q;
    ++count;
  }
};

/// Stress of resultants at the faces and in the middle of a plate.
struct FaceStress {
  Eigen::Vector3d top, middle, bottom;
  Eigen::Vector2d shear; ///< in the middle, its greatest: a parabola over the thickness

  FaceStress(const ShellResultants& r, double t)
      : middle(r.n / t)
      , shear(r.q * (1.5 / t)) {
    const Eigen::Vector3d bending = r.m * (6 / (t * t));
    top = middle + bending;
    bottom = middle - bending;
  }
  [[nodiscard]] std::array<double, 3> von_mises_at() const {
    return {von_mises(top[0], top[1], top[2], 0, 0), von_mises(middle[0], middle[1], middle[2], shear[0], shear[1]),
            von_mises(bottom[0], bottom[1], bottom[2], 0, 0)};
  }
};

} // namespace

void fill_surface(std::vector<std::array<ShellResultants, 4>> at_corners, bool judged, ShellStress& s) {
  std::vector<Average> averages(s.points.size());
  for (std::size_t q = 0; q < s.quads.size(); ++q)
    for (std::size_t k = 0; k < 4; ++k) averages[static_cast<std::size_t>(s.quads[q][k])].add(at_corners[q][k]);
  for (const Average& a : averages) {
    const FaceStress stress({a.sum.n / a.count, a.sum.m / a.count, a.sum.q / a.count}, s.thickness);
    s.von_mises.push_back(stress.von_mises_at());
    if (judged) continue;
    const auto top = principal(stress.top), bottom = principal(stress.bottom);
    s.principal.push_back({top[0], top[1], bottom[0], bottom[1]});
  }
  if (!judged) return;
  s.judged = patch_peak({s.points, s.quads, std::move(at_corners)}, s.thickness, [&](const ShellResultants& r) {
    return std::ranges::max(FaceStress(r, s.thickness).von_mises_at());
  });
}

} // namespace bedbow
