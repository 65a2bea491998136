#include "mesh/check/validate_parts.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

using Eigen::Vector3d;

/// Permitted distance of a hold's or load's point from the part it acts on [m].
constexpr double touching = 1e-6;

double distance_to_member(const Member& m, const Vector3d& p) {
  const Vector3d along = m.to - m.from;
  const double share = std::clamp((p - m.from).dot(along) / along.squaredNorm(), 0.0, 1.0);
  return (p - m.from - share * along).norm();
}

double distance_to_panel(const Panel& panel, const Vector3d& p) {
  const Vector3d d = p - panel.corner;
  const double a = std::clamp(d.dot(panel.edge_a) / panel.edge_a.squaredNorm(), 0.0, 1.0);
  const double b = std::clamp(d.dot(panel.edge_b) / panel.edge_b.squaredNorm(), 0.0, 1.0);
  return (d - a * panel.edge_a - b * panel.edge_b).norm();
}

/// Whether a member or panel has an invalid place, which has been reported: it might lie anywhere.
bool astray(const Machine& m) {
  return std::ranges::any_of(m.members, [](const Member& x) { return !((x.to - x.from).norm() >= touching); }) ||
         std::ranges::any_of(m.panels, [](const Panel& x) { return !(x.edge_a.cross(x.edge_b).norm() > 0); });
}

/// Whether a point lies on some part of the user's mesh; one with invalid coordinates, which are reported, might lie
/// anywhere.
bool on_own(const Machine& m, const Vector3d& p) {
  if (std::ranges::any_of(m.own.points, [](const Vector3d& x) { return !x.allFinite(); })) return true;
  for (std::size_t i = 0; i < m.own.parts.size(); ++i)
    if (nearest_on_part(m.own, static_cast<int>(i), p).distance < touching) return true;
  return false;
}

/// Whether a point lies on some member, panel or part of the user's mesh.
bool on_structure(const Machine& m, const Vector3d& p) {
  return astray(m) || on_own(m, p) ||
         std::ranges::any_of(m.members, [&](const Member& x) { return distance_to_member(x, p) < touching; }) ||
         std::ranges::any_of(m.panels, [&](const Panel& x) { return distance_to_panel(x, p) < touching; });
}

void validate_members(Validator& v) {
  const auto& members = v.machine.members;
  for (std::size_t i = 0; i < members.size(); ++i) {
    const Member& m = members[i];
    const std::string key = joint_key("member", m.name, i);
    const Vector3d along = m.to - m.from;
    if (along.norm() < touching) v.error(m.pos, key, "its two ends are the same point " + place_in_mm(m.from));
    if (!m.up.allFinite()) continue;
    if (m.up.norm() == 0)
      v.error(m.pos, key, "`up` is a zero vector; give a direction, as in [0, 0, 1]");
    else if (m.up.normalized().cross(along.normalized()).norm() < 1e-6)
      v.error(m.pos, key, "`up` points along the member; give a direction across it");
  }
}

void validate_panels(Validator& v) {
  const auto& panels = v.machine.panels;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const Panel& p = panels[i];
    const std::string key = joint_key("panel", p.name, i);
    const double a = p.edge_a.norm(), b = p.edge_b.norm();
    if (a < touching || b < touching)
      v.error(p.pos, key, "an edge has zero length");
    else if (std::abs(p.edge_a.dot(p.edge_b)) > 1e-6 * a * b)
      v.error(p.pos, key, "edge_a and edge_b are not at right angles; a panel is a rectangle");
    if (p.thickness > std::min(a, b)) v.warning(p.pos, key, "it is thicker than it is wide: use a [[member]] instead");
  }
}

void validate_holds(Validator& v) {
  const auto& holds = v.machine.holds;
  for (std::size_t i = 0; i < holds.size(); ++i)
    for (const Vector3d& p : {holds[i].from, holds[i].to}) // a set of points has no place of its own: NaN
      if (p.allFinite() && !on_structure(v.machine, p)) {
        v.error(holds[i].pos, "hold." + std::to_string(i + 1),
                "at " + place_in_mm(p) + " there is no member, panel or mesh to hold; hold a bar by a [[support]]");
        break;
      }
}

/// x of a spot on a bar must lie within its length.
bool off_bar(const Machine& m, const Ref& r, const Vector3d& p) {
  if (r.kind != Ref::Kind::bar) return false;
  const Bar& bar = m.bar(r);
  return p.x() < bar.start - same_length || p.x() > bar.end() + same_length;
}

std::string reach(const Machine& m, const Ref& r) {
  const Bar& bar = m.bar(r);
  return m.name_of(r) + ", which extends from x = " + in_mm(bar.start) + " to " + in_mm(bar.end());
}

void validate_loads(Validator& v) {
  const auto& loads = v.machine.loads;
  for (std::size_t i = 0; i < loads.size(); ++i) {
    const Load& load = loads[i];
    if (load.kind == Load::Kind::pressure || load.kind == Load::Kind::set) continue;
    const std::string key = "load." + std::to_string(i + 1);
    for (const Vector3d& p : {load.from, load.to}) {
      if (!p.allFinite()) continue;
      if (off_bar(v.machine, load.on, p)) {
        v.error(load.pos, key, "the load at x = " + in_mm(p.x()) + " is off its bar " + reach(v.machine, load.on));
        break;
      }
      if (load.on.kind == Ref::Kind::none && !on_structure(v.machine, p)) {
        v.error(load.pos, key,
                "at " + place_in_mm(p) + " there is no member, panel or mesh to carry it; name a bar with `on`");
        break;
      }
    }
    if (load.kind == Load::Kind::line && (load.to - load.from).norm() < touching)
      v.error(load.pos, key, "its line has zero length");
  }
}

void validate_dials(Validator& v) {
  constexpr double far = 0.05;
  for (const Dial& d : v.machine.dials) {
    const std::string key = "dial." + d.name;
    if (d.on.kind == Ref::Kind::bar && off_bar(v.machine, d.on, d.at))
      v.error(d.pos, key,
              "at x = " + in_mm(d.at.x()) + " it touches nothing; it is off the bar " + reach(v.machine, d.on));
    double gap = 0;
    if (d.on.kind == Ref::Kind::bar && v.box(d.on)) gap = v.box(d.on)->distance({d.at.y(), d.at.z()});
    if (d.on.kind == Ref::Kind::member)
      gap = distance_to_member(v.machine.members[static_cast<std::size_t>(d.on.index)], d.at);
    if (d.on.kind == Ref::Kind::panel)
      gap = distance_to_panel(v.machine.panels[static_cast<std::size_t>(d.on.index)], d.at);
    if (d.on.kind == Ref::Kind::own) gap = nearest_on_part(v.machine.own, d.on.index, d.at).distance;
    if (gap > far)
      v.warning(d.pos, key,
                "it is " + in_mm(gap) + " away from " + v.machine.name_of(d.on) + "; a rigid arm carries it");
  }
}

} // namespace

void validate_structure(Validator& v) {
  validate_members(v);
  validate_panels(v);
  validate_holds(v);
  validate_loads(v);
  validate_dials(v);
}

} // namespace bedbow
