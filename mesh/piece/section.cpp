#include "mesh/piece/section.h"

#include <cmath>

namespace bedbow {

namespace {

// Direct stress is a plane over the section: sigma = at_centroid + per_y y + per_z z.
struct StressPlane {
  double at_centroid, per_y, per_z;
};

StressPlane stress_plane(const SectionProperties& p, const SectionForces& f) {
  const double det = p.Iyy * p.Izz - p.Iyz * p.Iyz;
  return {f.N / p.A, -(f.Mz * p.Iyy + f.My * p.Iyz) / det, (f.My * p.Izz + f.Mz * p.Iyz) / det};
}

} // namespace

double direct_stress(const SectionProperties& p, const SectionForces& f, double y, double z) {
  const StressPlane plane = stress_plane(p, f);
  return plane.at_centroid + plane.per_y * y + plane.per_z * z;
}

Eigen::Vector2d shear_stress(const StressPoint& point, const SectionForces& f) {
  return point.tau_Vy * f.Vy + point.tau_Vz * f.Vz + point.tau_T * f.T;
}

std::pair<double, int> worst_von_mises(const Section& s, const SectionForces& f) {
  const StressPlane plane = stress_plane(s.props, f);
  double worst = -1;
  int at = -1;
  for (std::size_t i = 0; i < s.points.size(); ++i) {
    const StressPoint& point = s.points[i];
    const double sigma = plane.at_centroid + plane.per_y * point.y + plane.per_z * point.z;
    const double squared = sigma * sigma + 3 * shear_stress(point, f).squaredNorm();
    if (squared > worst) {
      worst = squared;
      at = static_cast<int>(i);
    }
  }
  return {std::sqrt(std::max(worst, 0.0)), at};
}

} // namespace bedbow
