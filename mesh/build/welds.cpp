#include "mesh/build/welds.h"

#include "mesh/build/places.h"
#include "mesh/build/stations.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Stiffness of a seam relative to a strip of the bars' material as wide as it is long: enough that bars of usual size
/// lose less than 0.01 % to slip, no more than the error of their elements.
constexpr double far_stiffer = 1000;

/// Tributary length of the seam for each station.
struct WeldSpot {
  double x, length;
};

std::vector<WeldSpot> spots_between(const std::vector<double>& stations, double from, double to) {
  std::vector<WeldSpot> spots;
  for (double x : stations)
    if (x >= from - same_place && x <= to + same_place) spots.push_back({x, 0});
  for (std::size_t i = 0; i + 1 < spots.size(); ++i) {
    const double half = (spots[i + 1].x - spots[i].x) / 2;
    spots[i].length += half;
    spots[i + 1].length += half;
  }
  if (spots.size() == 1) spots[0].length = 1e-3; // a tack of a millimetre
  return spots;
}

/// Width of the faces that meet [m].
double width_of_seam(const Machine& machine, const Mesh& mesh, const Weld& w) {
  std::array<SectionBox, 2> box;
  for (std::size_t i = 0; i < 2; ++i)
    box[i] = section_box(machine.bar(w.joins[i]), mesh.sections[layout_of(mesh, w.joins[i]).section]);
  const Eigen::Vector2d overlap = box[0].upper.cwiseMin(box[1].upper) - box[0].lower.cwiseMax(box[1].lower);
  return std::max(overlap.maxCoeff(), 1e-3);
}

/// Of a seam between two bars.
double seam_between(const Machine& machine, const std::array<Ref, 2>& joins) {
  double E = 0;
  for (const Ref& bar : joins) E = std::max(E, machine.materials.at(machine.bar(bar).material).E);
  return seam_stiffness(E);
}

} // namespace

double seam_stiffness(double E) {
  return far_stiffer * E;
}

void add_weld(const Machine& machine, const Weld& w, int index, Mesh& mesh) {
  const Bar& one = machine.bar(w.joins[0]);
  const Bar& other = machine.bar(w.joins[1]);
  double from = std::max(one.start, other.start);
  double to = std::min(one.end(), other.end());
  if (std::isfinite(w.from)) from = std::max(from, w.from);
  if (std::isfinite(w.to)) to = std::min(to, w.to);
  const Eigen::Vector3d at = complete_place(machine, mesh, w.joins, w.at);
  const double width = width_of_seam(machine, mesh, w);
  const double per_length = seam_between(machine, w.joins);
  for (const WeldSpot& s : spots_between(mesh.stations, from, to)) {
    Joint j;
    j.kind = JointKind::weld;
    j.index = index;
    j.name = w.name.empty() ? "weld" : w.name;
    j.a = place_on_bar(machine, mesh, w.joins[0], {s.x, at.y(), at.z()});
    j.b = place_on_bar(machine, mesh, w.joins[1], {s.x, at.y(), at.z()});
    const double k = per_length * s.length;
    j.stiffness = {k, k, k, k * width * width / 12, 0, 0};
    j.tributary = s.length;
    mesh.joints.push_back(std::move(j));
  }
}

} // namespace bedbow
