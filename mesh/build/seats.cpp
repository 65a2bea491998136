#include "mesh/build/seats.h"

#include "mesh/build/welds.h"

#include <algorithm>
#include <cmath>

namespace bedbow::mesher {

namespace {

/// Calls f(joint, id, place) with an ArmSide for each side of each joint that stands on a bar; of rows of screws once,
/// at an x that means nothing, and of welds not.
template <class F> void each_bar_seat(const Machine& m, const Mesh& mesh, F f) {
  m.each_joint_list([&](JointKind kind, const auto& list) {
    if (kind == JointKind::weld) return;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto& j = list[i];
      const Eigen::Vector3d at = place_of(m, mesh, j, kind);
      const auto seats = seats_of(m, mesh, j, kind, at);
      for (std::size_t side = 0; side < 2; ++side)
        if (j.joins[side].kind == Ref::Kind::bar) f(j, ArmSide{kind, i, side, seats[side]}, at);
    }
  });
}

bool is_plate(const Builder& b, const Ref& bar) {
  return b.machine.bar(bar).model == BarModel::plate;
}

/// A seat smaller than two elements, which therefore needs nodes at its edges.
bool is_small(const Builder& b, double size) {
  return size > 0 && size < 2 * b.machine.solve.element_size;
}

} // namespace

std::vector<ArmSide> joints_on_arms(const Machine& m, const Mesh& mesh) {
  std::vector<ArmSide> out;
  each_bar_seat(m, mesh, [&](const auto& /*joint*/, const ArmSide& s, const Eigen::Vector3d& /*at*/) {
    if (s.seat.arm > 0 && !s.seat.given) out.push_back(s);
  });
  return out;
}

Eigen::Vector3d place_of(const Machine& m, const Mesh& mesh, const JointBase& joint, JointKind kind) {
  return bedbow::place_of(m, joint, kind, boxes_of(m, mesh, joint.joins));
}

Patch patch_of(const JointBase& joint, const Contact& contact) {
  if (joint.seat.allFinite()) return {joint.seat.x(), joint.seat.y(), false};
  // The width of a part of a mesh is not known: what holds a whole width of a bar holds a point there.
  const auto known = [](double size) { return std::isfinite(size) ? size : 0; };
  return {known(contact.along), known(contact.across), true};
}

std::vector<double> seat_stations(const Builder& b) {
  std::vector<double> out;
  each_bar_seat(b.machine, b.mesh, [&](const auto& j, const ArmSide& s, const Eigen::Vector3d& at) {
    if (!is_plate(b, j.joins[s.side]) || !is_small(b, s.seat.along)) return;
    const Bar& bar = b.machine.bar(j.joins[s.side]);
    const auto edges = [&](double x) {
      for (double edge : {x - s.seat.along / 2, x + s.seat.along / 2})
        if (edge > bar.start && edge < bar.end()) out.push_back(edge);
    };
    if constexpr (requires { j.x; })
      for (double x : j.x) edges(x);
    else
      edges(at.x());
  });
  return out;
}

std::vector<double> seat_rows(const Builder& b, const BarLayout& l) {
  const Bar& bar = b.machine.bar(l.owner);
  std::vector<double> rows;
  const auto across = [&](const Eigen::Vector3d& at) { return l.standing ? at.z() - bar.at.y() : at.y() - bar.at.x(); };
  each_bar_seat(b.machine, b.mesh, [&](const auto& j, const ArmSide& s, const Eigen::Vector3d& at) {
    if (j.joins[s.side] != l.owner) return;
    rows.push_back(across(at));
    if (is_small(b, s.seat.across))
      rows.insert(rows.end(), {across(at) - s.seat.across / 2, across(at) + s.seat.across / 2});
  });
  for (const Weld& w : b.machine.welds)
    if (w.joins[0] == l.owner || w.joins[1] == l.owner)
      for (const Eigen::Vector2d& line : weld_lines(b.machine, b.mesh, w))
        rows.push_back(across({0, line.x(), line.y()}));
  return rows;
}

namespace {

/// Lines of a strip nearer to each other than this share of its thickness are one. With half of it strips differ least
/// from plates on random clamps (docs/theory/strips.md).
constexpr double close_lines = 0.5;

/// Lines of one kind, merged where they are close: the result does not depend on their order, nor on the side from
/// which one looks.
std::vector<double> merged(std::vector<double> c, double near, double half_width, const std::vector<double>& taken) {
  std::erase_if(c, [&](double v) {
    return half_width - std::abs(v) <= near ||
           std::ranges::any_of(taken, [&](double t) { return std::abs(v - t) <= near; });
  });
  std::ranges::sort(c);
  std::vector<double> out;
  for (std::size_t i = 0; i < c.size();) {
    std::size_t end = i + 1;
    while (end < c.size() && c[end] - c[end - 1] <= near) ++end;
    const double from = c[i], to = c[end - 1];
    const int lines = 1 + static_cast<int>((to - from) / (2 * near));
    for (int k = 0; k < lines; ++k) out.push_back(from + (to - from) * (k + 0.5) / lines);
    i = end;
  }
  return out;
}

} // namespace

AcrossLines strip_lines(const Builder& b, const BarLayout& l) {
  const Machine& m = b.machine;
  const Bar& bar = m.bar(l.owner);
  const double width = std::max(bar.shape.width, bar.shape.height);
  // With room for rounding, so that an inch makes no other lines.
  const double near = close_lines * std::min(bar.shape.width, bar.shape.height) + same_place;
  const auto across = [&](double y, double z) { return l.standing ? z - bar.at.y() : y - bar.at.x(); };
  AcrossLines given;
  each_bar_seat(m, b.mesh, [&](const auto& j, const ArmSide& s, const Eigen::Vector3d& at) {
    if (j.joins[s.side] != l.owner) return;
    if (s.seat.across >= (1 - 1e-9) * width) return; // takes the whole section along
    const bool couple = s.kind == JointKind::screw || s.seat.arm > 0;
    (couple ? given.feet : given.points).push_back(across(at.y(), at.z()));
  });
  for (const Weld& w : m.welds)
    if (w.joins[0] == l.owner || w.joins[1] == l.owner)
      for (const Eigen::Vector2d& line : weld_lines(m, b.mesh, w)) given.feet.push_back(across(line.x(), line.y()));
  const auto is = [&](BodyKind body, int index) { return l.owner == Ref{Ref::Kind::bar, body, index}; };
  const bool bed = is(BodyKind::bed, m.body(BodyKind::bed).edge_bar), nose = is(BodyKind::clamp, m.nose.bar);
  if (m.sheet && !m.fingers && (bed || nose))
    given.points.push_back(across(m.nose.setback + m.nose.land / 2, bed ? 0 : m.sheet->thickness));
  for (const Load& load : m.loads)
    if (load.on == l.owner) given.points.push_back(across(load.from.y(), load.from.z()));
  AcrossLines out;
  out.feet = merged(given.feet, near, width / 2, {});
  out.points = merged(given.points, near, width / 2, out.feet);
  return out;
}

} // namespace bedbow::mesher
