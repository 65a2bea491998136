#include "mesh/build/welds.h"

#include "mesh/build/places.h"
#include "mesh/build/stations.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

/// Stiffness of a seam at a station relative to a cube of the bars' material of the seam's width: so much that what it
/// yields shows in no printed digit, and little enough that it costs no digits of the solution (a hundred times that
/// leaves residuals of 1e-8).
constexpr double far_stiffer = 1000;

/// Stations along a seam.
std::vector<double> stations_between(const std::vector<double>& stations, double from, double to) {
  std::vector<double> out;
  for (double x : stations)
    if (x >= from - same_place && x <= to + same_place) out.push_back(x);
  return out;
}

/// Where the sections of two bars meet, as a box; inside out where there is a gap.
BarBox meeting_of(const Machine& machine, const Mesh& mesh, const Weld& w) {
  const BarBox one = box_of(machine, mesh, w.joins[0]), other = box_of(machine, mesh, w.joins[1]);
  return {one.lower.cwiseMax(other.lower), one.upper.cwiseMin(other.upper)};
}

/// Sides of the sections of the bars that a weld joins.
struct SeamSizes {
  double width =
      0; ///< of the faces that meet, at least the least side of a bar: bars may touch at their edges only [m]
  double depth = 0; ///< greatest side of either bar [m]
};

SeamSizes sizes_of_seam(const Machine& machine, const Mesh& mesh, const Weld& w) {
  const BarBox meeting = meeting_of(machine, mesh, w);
  double least = std::numeric_limits<double>::infinity();
  SeamSizes out;
  for (const Ref& r : w.joins) {
    const BarBox box = box_of(machine, mesh, r);
    least = std::min(least, (box.upper - box.lower).minCoeff());
    out.depth = std::max(out.depth, (box.upper - box.lower).maxCoeff());
  }
  out.width = std::max((meeting.upper - meeting.lower).maxCoeff(), least);
  return out;
}

/// The greater Young's modulus of two bars [Pa].
double greater_E(const Machine& machine, const std::array<Ref, 2>& joins) {
  double E = 0;
  for (const Ref& bar : joins) E = std::max(E, machine.materials.at(machine.bar(bar).material).E);
  return E;
}

} // namespace

double seam_stiffness(double E, double width) {
  return far_stiffer * E * width;
}

std::vector<Eigen::Vector2d> weld_lines(const Machine& machine, const Mesh& mesh, const Weld& w) {
  const Eigen::Vector2d middle = complete_place(machine, mesh, w.joins, w.at).tail<2>();
  const BarBox meeting = meeting_of(machine, mesh, w);
  const Eigen::Vector2d overlap = meeting.upper - meeting.lower;
  const int k = overlap[0] > overlap[1] ? 0 : 1;
  if (w.sides == 1 || overlap[k] <= same_place) return {middle};
  std::vector<Eigen::Vector2d> lines(2, middle);
  lines[0][k] = meeting.lower[k];
  lines[1][k] = meeting.upper[k];
  return lines;
}

SeamSpan seam_span(const Machine& machine, const Weld& w) {
  const Bar& one = machine.bar(w.joins[0]);
  const Bar& other = machine.bar(w.joins[1]);
  SeamSpan s{std::max(one.start, other.start), std::min(one.end(), other.end())};
  if (std::isfinite(w.from)) s.from = std::max(s.from, w.from);
  if (std::isfinite(w.to)) s.to = std::min(s.to, w.to);
  return s;
}

void add_weld(const Machine& machine, const Weld& w, int index, Mesh& mesh) {
  const SeamSpan span = seam_span(machine, w);
  const SeamSizes size = sizes_of_seam(machine, mesh, w);
  const double k = seam_stiffness(greater_E(machine, w.joins), size.width);
  for (const Eigen::Vector2d& line : weld_lines(machine, mesh, w))
    for (double x : stations_between(mesh.stations, span.from, span.to)) {
      const Eigen::Vector3d at(x, line.x(), line.y());
      Joint j;
      j.kind = JointKind::weld;
      j.index = index;
      j.name = w.name.empty() ? "weld" : w.name;
      j.a = place_on_bar(machine, mesh, w.joins[0], at);
      j.b = place_on_bar(machine, mesh, w.joins[1], at);
      j.stiffness = {k, k, k, k * size.depth * size.depth / 12, 0, 0};
      mesh.joints.push_back(std::move(j));
    }
}

} // namespace bedbow
