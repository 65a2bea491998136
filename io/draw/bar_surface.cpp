#include "io/draw/section_ring.h"
#include "io/draw/surface.h"
#include "mesh/piece/si.h"

#include <Eigen/Geometry>

namespace bedbow {

namespace {

SurfacePoint ring_point(const BarField& bar, std::size_t station, const StressPoint& on_outline) {
  const Eigen::Vector3d arm = bar.axes.transpose() * Eigen::Vector3d(0, on_outline.y, on_outline.z);
  const Vector6d& motion = bar.motion[station];
  SurfacePoint p;
  p.at = bar.points[station] + arm;
  p.rotation = motion.tail<3>();
  p.displacement = motion.head<3>() + p.rotation.cross(arm);
  RingStress worst;
  if (station < bar.forces.size())
    for (const SectionForces& forces : bar.forces[station]) {
      const RingStress s = ring_stress(bar.section->props, on_outline, forces);
      if (s.von_mises() > worst.von_mises()) worst = s;
    }
  p.von_mises = worst.von_mises();
  p.von_mises_middle = nan;
  p.principal_1 = worst.principal()[0];
  p.principal_2 = worst.principal()[1];
  p.utilisation = bar.yield > 0 ? p.von_mises / bar.yield : nan;
  return p;
}

} // namespace

void add_bar(Surface& surface, const BarField& bar) {
  if (!bar.section || bar.points.size() < 2) return;
  const SectionRing ring = section_ring(*bar.section);
  const int base = static_cast<int>(surface.points.size());
  const int first_cell = static_cast<int>(surface.cells.size());
  const int per_station = static_cast<int>(ring.points.size());
  const int stations = static_cast<int>(bar.points.size());
  for (std::size_t s = 0; s < bar.points.size(); ++s)
    for (const StressPoint& p : ring.points) surface.points.push_back(ring_point(bar, s, p));

  for (int s = 0; s + 1 < stations; ++s)
    for (const auto& [a, b] : ring.edges) {
      const int here = base + s * per_station;
      const int next = here + per_station;
      surface.cells.push_back({here + a, here + b, next + b, next + a});
    }
  const int last = base + (stations - 1) * per_station;
  for (const auto& [a, b, c] : ring.triangles) {
    surface.cells.push_back({base + c, base + b, base + a, -1}); // the face at the start looks backwards
    surface.cells.push_back({last + a, last + b, last + c, -1});
  }
  surface.parts.push_back({bar.name, bar.body, base, stations * per_station, first_cell,
                           static_cast<int>(surface.cells.size()) - first_cell});
}

} // namespace bedbow
