#include "solver/findings/bend_line.h"

#include "mesh/build/places.h"
#include "mesh/machine/frame.h"
#include "mesh/piece/si.h"
#include "solver/findings/nose_hold.h"
#include "solver/model/recovery.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <tuple>
#include <utility>

namespace bedbow {

namespace {

constexpr int inner_points = 3; // evaluated inside each element, so that a bow between stations is not missed

/// Convex hull (lower or upper) of points ordered by x.
std::vector<std::size_t> hull(std::span<const double> x, std::span<const double> w, double side) {
  std::vector<std::size_t> h;
  h.reserve(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) {
    while (h.size() >= 2) {
      const std::size_t a = h[h.size() - 2];
      const std::size_t b = h.back();
      if (side * ((x[b] - x[a]) * (w[i] - w[a]) - (w[b] - w[a]) * (x[i] - x[a])) > 0) break;
      h.pop_back();
    }
    h.push_back(i);
  }
  return h;
}

/// Displacements of nose, edge and face at x with the crowns on them, global axes.
struct Line {
  std::optional<Eigen::Vector3d> nose, edge, face;
};

std::vector<Line> lines_at(const Model& m, const StepSolution& s, const std::vector<double>& at) {
  const Machine& c = m.machine;
  const Sheet& sheet = *c.sheet;
  std::vector<Line> lines(at.size());
  const auto along = [&](BodyKind kind, int bar, double y, double z) {
    return section_motions(m, s, {Ref::Kind::bar, kind, bar}, at, y, z);
  };
  if (const Body& clamp = c.body(BodyKind::clamp); clamp.present()) {
    std::vector<Vector6d> bar;
    if (!c.fingers) bar = along(BodyKind::clamp, c.nose.bar, c.nose.setback, sheet.thickness);
    for (std::size_t i = 0; i < at.size(); ++i) {
      std::optional<Eigen::Vector3d>& nose = lines[i].nose;
      if (!c.fingers)
        nose = bar[i].head<3>();
      else if (const auto place = nose_place(c, m.mesh, at[i], c.nose.setback, sheet.thickness))
        nose = place_motion(s, *place).head<3>();
      if (nose) nose->z() -= clamp.crown.at(at[i]);
    }
  }
  if (const Body& bed = c.body(BodyKind::bed); bed.present()) {
    const std::vector<Vector6d> bar = along(BodyKind::bed, bed.edge_bar, 0, 0);
    for (std::size_t i = 0; i < at.size(); ++i)
      lines[i].edge = bar[i].head<3>() + Eigen::Vector3d(0, 0, bed.crown.at(at[i]));
  }
  if (const Body& apron = c.body(BodyKind::apron); apron.present()) {
    const std::vector<Vector6d> bar = along(BodyKind::apron, apron.edge_bar, -sheet.flange, 0);
    const Eigen::Matrix3d turn = apron_turn(s.angle);
    for (std::size_t i = 0; i < at.size(); ++i)
      lines[i].face = turn * (bar[i].head<3>() + Eigen::Vector3d(0, 0, apron.crown.at(at[i])));
  }
  return lines;
}

/// Curves to measure bow on: stations and points between them.
struct Curve {
  std::vector<double> x, w;
  void add(double at, double value) {
    x.push_back(at);
    w.push_back(value);
  }
};

std::vector<double> fine_stations(const std::vector<double>& stations) {
  std::vector<double> x;
  for (std::size_t i = 0; i + 1 < stations.size(); ++i)
    for (int k = 0; k <= inner_points; ++k)
      x.push_back(k == 0 ? stations[i] : stations[i] + (stations[i + 1] - stations[i]) * k / (inner_points + 1));
  x.push_back(stations.back());
  return x;
}

/// Bow and straightness of a body's edge. A crown is not a bow: shims may reduce the bow, but their own height does not
/// count, so the lesser of the edge with and without them is taken.
/// \param crown of the body. \param side +1 where it points along the curve's positive direction, else -1.
std::pair<double, double> bow_of(const Curve& edge, const Crown& crown, double side) {
  if (edge.x.size() < 2) return {nan, nan};
  const std::pair<double, double> with{bow_from_chord(edge.x, edge.w), straightness(edge.x, edge.w)};
  if (crown.x.empty()) return with;
  Curve bare = edge;
  for (std::size_t i = 0; i < bare.x.size(); ++i) bare.w[i] -= side * crown.at(bare.x[i]);
  return {std::min(with.first, bow_from_chord(bare.x, bare.w)), std::min(with.second, straightness(bare.x, bare.w))};
}

/// \param at, lines displacements at the fine stations.
void fill_bow(const Model& m, const std::vector<double>& at, const std::vector<Line>& lines, const Eigen::Vector3d& n,
              StepResult& out) {
  Curve nose;
  Curve edge;
  Curve face;
  Curve angle;
  for (std::size_t i = 0; i < at.size(); ++i) {
    const double x = at[i];
    const Line& l = lines[i];
    if (l.nose) nose.add(x, l.nose->z());
    if (l.edge) edge.add(x, l.edge->z());
    if (l.face) face.add(x, l.face->dot(n));
    if (l.nose && l.face) angle.add(x, (*l.face - *l.nose).dot(n) / m.machine.sheet->flange);
  }
  for (auto [kind, curve] :
       {std::pair{BodyKind::clamp, &nose}, std::pair{BodyKind::bed, &edge}, std::pair{BodyKind::apron, &face}}) {
    const auto k = static_cast<std::size_t>(kind);
    std::tie(out.bow.bow[k], out.bow.straightness[k]) =
        bow_of(*curve, m.machine.body(kind).crown, kind == BodyKind::clamp ? -1 : 1);
  }
  if (angle.x.size() < 2) {
    out.bow.angle_mean = out.bow.angle_spread = nan;
    return;
  }
  double area = 0;
  for (std::size_t i = 0; i + 1 < angle.x.size(); ++i)
    area += (angle.x[i + 1] - angle.x[i]) * (angle.w[i] + angle.w[i + 1]) / 2;
  out.bow.angle_mean = area / (angle.x.back() - angle.x.front());
  const auto [least, most] = std::minmax_element(angle.w.begin(), angle.w.end());
  out.bow.angle_spread = *most - *least;
}

/// Without a sheet: bow along z of each body's bend-line edge over the whole bar that carries it.
void fill_whole_bow(const Model& m, const StepSolution& step, BowResult& out) {
  out.bow.fill(nan);
  out.straightness.fill(nan);
  out.angle_mean = out.angle_spread = nan;
  for (BodyKind kind : {BodyKind::clamp, BodyKind::bed, BodyKind::apron}) {
    const Body& body = m.machine.body(kind);
    if (!body.present()) continue;
    const bool clamp = kind == BodyKind::clamp;
    const Ref edge{Ref::Kind::bar, kind, std::max(clamp ? m.machine.nose.bar : body.edge_bar, 0)};
    Curve curve;
    curve.x = fine_stations(layout_of(m.mesh, edge).stations);
    for (const Vector6d& v : section_motions(m, step, edge, curve.x, clamp ? m.machine.nose.setback : 0, 0))
      curve.w.push_back(v.z());
    const auto k = static_cast<std::size_t>(kind);
    out.bow[k] = bow_from_chord(curve.x, curve.w);
    out.straightness[k] = straightness(curve.x, curve.w);
  }
}

} // namespace

double bow_from_chord(std::span<const double> x, std::span<const double> w) {
  const double run = x.back() - x.front();
  const double slope = (w.back() - w.front()) / run;
  double most = 0;
  for (std::size_t i = 0; i < x.size(); ++i)
    most = std::max(most, std::abs(w[i] - w.front() - slope * (x[i] - x.front())));
  return most / std::sqrt(1 + slope * slope);
}

double straightness(std::span<const double> x, std::span<const double> w) {
  // The best zone has one line along an edge of the convex hull. The farthest point from an edge of one chain is a
  // corner of the other, and wanders backwards along it as the edge goes on: one pass over both (rotating calipers).
  double best = std::numeric_limits<double>::infinity();
  const std::vector<std::size_t> lower = hull(x, w, 1);
  const std::vector<std::size_t> upper = hull(x, w, -1);
  for (double side : {1.0, -1.0}) {
    const std::vector<std::size_t>& h = side > 0 ? lower : upper;
    const std::vector<std::size_t>& other = side > 0 ? upper : lower;
    std::size_t far = other.size() - 1;
    for (std::size_t k = 0; k + 1 < h.size(); ++k) {
      const double slope = (w[h[k + 1]] - w[h[k]]) / (x[h[k + 1]] - x[h[k]]);
      const auto width = [&](std::size_t i) {
        return side * (w[other[i]] - w[h[k]] - slope * (x[other[i]] - x[h[k]]));
      };
      while (far > 0 && width(far - 1) >= width(far)) --far;
      best = std::min(best, width(far));
    }
  }
  return std::isfinite(best) ? best : 0;
}

void fill_bend_line(const Model& m, const StepSolution& step, StepResult& out) {
  if (m.mesh.bend_stations.size() < 2) {
    fill_whole_bow(m, step, out.bow);
    return;
  }
  const Eigen::Vector3d n = apron_turn(step.angle) * Eigen::Vector3d::UnitZ();
  BendLine& line = out.bend_line;
  const std::vector<double> at = fine_stations(m.mesh.bend_stations);
  const std::vector<Line> lines = lines_at(m, step, at);
  for (std::size_t i = 0; i < at.size(); i += inner_points + 1) { // the stations themselves
    const Line& l = lines[i];
    line.x.push_back(at[i]);
    line.nose_y.push_back(l.nose ? l.nose->y() : nan);
    line.nose_z.push_back(l.nose ? l.nose->z() : nan);
    line.bed_z.push_back(l.edge ? l.edge->z() : nan);
    line.apron_n.push_back(l.face ? l.face->dot(n) : nan);
    line.angle_deviation.push_back(l.face && l.nose ? (*l.face - *l.nose).dot(n) / m.machine.sheet->flange : nan);
  }
  fill_bow(m, at, lines, n, out);
  fill_nose(m, step, line);
}

} // namespace bedbow
