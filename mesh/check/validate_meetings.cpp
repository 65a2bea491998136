// Members and panels that touch but are not joined: in a real machine they would be welded.
#include "mesh/build/mesh_builder.h"
#include "mesh/check/validate_parts.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

using Eigen::Vector3d;
using mesher::one_place;

/// An end closer than this to another member, but not on it, was probably meant to lie on it [m]; no source.
constexpr double slip = 1e-3;

/// Projection of a place on a member, measured from `from` [m], and its distance.
struct Foot {
  double along = 0, length = 0, distance = 0;
  [[nodiscard]] bool between() const { return along > one_place && along < length - one_place; }
};

Foot foot_on(const Member& m, const Vector3d& p) {
  const Vector3d d = m.to - m.from;
  const double length = d.norm();
  const double along = std::clamp((p - m.from).dot(d) / length, 0.0, length);
  return {along, length, (p - m.from - along / length * d).norm()};
}

std::string name_of(const Validator& v, std::size_t i) {
  const std::string& name = v.machine.members[i].name;
  return "member " + (name.empty() ? std::to_string(i + 1) : name);
}

bool tied(const Machine& m, std::size_t one, std::size_t other) {
  const auto is = [](const Ref& r, std::size_t i) {
    return r.kind == Ref::Kind::member && r.index == static_cast<int>(i);
  };
  return std::ranges::any_of(m.ties, [&](const Tie& t) {
    return (is(t.joins[0], one) && is(t.joins[1], other)) || (is(t.joins[0], other) && is(t.joins[1], one));
  });
}

/// Whether a place is in a member or on its face, in the box around its section.
bool inside(const Validator& v, const Member& m, const Vector3d& p) {
  const auto box = shape_box(m.shape, v.shapes);
  if (!box) return false;
  if (m.up.allFinite() && (m.to - m.from).cross(m.up).norm() < 1e-9 * m.up.norm()) return false; // reported elsewhere
  const Eigen::Matrix3d axes = mesher::beam_axes(m.to - m.from, m.up, m.name);
  const Vector3d local = axes * (p - m.from);
  const Eigen::Vector2d across = local.tail<2>();
  return local.x() > -one_place && local.x() < (m.to - m.from).norm() + one_place && box->distance(across) < one_place;
}

/// Whether an end of a member lies on something to which it is joined.
bool joined_somewhere(const Validator& v, std::size_t member, const Vector3d& end) {
  for (std::size_t i = 0; i < v.machine.members.size(); ++i)
    if (i != member && foot_on(v.machine.members[i], end).distance < one_place) return true;
  for (const BodyKind kind : all_bodies) {
    const std::vector<Bar>& bars = v.machine.body(kind).bars;
    for (std::size_t i = 0; i < bars.size(); ++i)
      if (const auto& box = v.boxes[static_cast<std::size_t>(kind)][i]; box && end.x() > bars[i].start - one_place &&
                                                                        end.x() < bars[i].end() + one_place &&
                                                                        box->distance(end.tail<2>()) < one_place)
        return true;
  }
  return std::ranges::any_of(v.machine.panels, [&](const Panel& p) {
    const Vector3d d = end - p.corner;
    const double a = d.dot(p.edge_a) / p.edge_a.squaredNorm(), b = d.dot(p.edge_b) / p.edge_b.squaredNorm();
    return std::min(a, b) > -one_place && std::max(a, b) < 1 + one_place &&
           (d - a * p.edge_a - b * p.edge_b).norm() < one_place;
  });
}

/// Ends of one member that miss another, or that lie on one to which they can't be joined.
void validate_ends(Validator& v, std::size_t one, std::size_t other) {
  const Member& a = v.machine.members[one];
  const Member& b = v.machine.members[other];
  for (const Vector3d& end : {a.from, a.to}) {
    const Foot foot = foot_on(b, end);
    const std::string key = joint_key("member", a.name, one);
    const std::string what = "its end at " + place_in_mm(end) + " lies ";
    if (b.tension_only && foot.between() && foot.distance < one_place)
      v.warning(a.pos, key,
                what + "on " + name_of(v, other) +
                    " between its ends, and is not joined to it: a tension-only member takes " +
                    "no lateral force; use two rods that end there");
    if (foot.distance > slip && !a.tension_only && !b.tension_only && inside(v, b, end) &&
        !joined_somewhere(v, one, end))
      v.warning(a.pos, key,
                what + "in " + name_of(v, other) + ", " + in_mm(foot.distance) +
                    " off its axis, and is not joined to it: draw it to the axis, where members are joined");
    if (foot.distance < one_place || foot.distance > slip || (b.tension_only && foot.between())) continue;
    v.warning(a.pos, key,
              what + in_mm(foot.distance) + " beside " + name_of(v, other) +
                  ", and is not joined to it: place it on the other's axis, or at its end");
  }
}

/// Where two members cross between their ends, neither of which lies there.
void validate_crossing(Validator& v, std::size_t one, std::size_t other) {
  const Member& a = v.machine.members[one];
  const Member& b = v.machine.members[other];
  const Vector3d da = (a.to - a.from).normalized();
  const Vector3d db = (b.to - b.from).normalized();
  const double c = da.dot(db);
  const double square = 1 - c * c;
  if (square < 1e-12) return; // one line, or side by side
  const Vector3d r = b.from - a.from;
  const Vector3d at = a.from + (r.dot(da) - c * r.dot(db)) / square * da;
  const Foot on_a = foot_on(a, at);
  const Foot on_b = foot_on(b, at);
  if (!on_a.between() || !on_b.between() || on_b.distance > one_place) return;
  // A third member that ends there joins all three.
  for (const Member& m : v.machine.members)
    if (!m.tension_only && std::min((m.from - at).norm(), (m.to - at).norm()) < one_place) return;
  v.warning(a.pos, joint_key("member", a.name, one),
            "it crosses " + name_of(v, other) + " at " + place_in_mm(at) +
                ", but they are not joined there; if they are joined in the machine, end one of them at that place");
}

/// Nodes on the edges of one panel that lie on another between its nodes.
void validate_edges(Validator& v, std::size_t one, std::size_t other) {
  const Panel& a = v.machine.panels[one];
  const Panel& b = v.machine.panels[other];
  int apart = 0;
  for (const Vector3d& p : mesher::edge_places(a)) {
    const Vector3d d = p - b.corner;
    bool node = true, on = true;
    Vector3d off = d;
    for (std::size_t k = 0; k < 2; ++k) {
      const Vector3d& edge = k == 0 ? b.edge_a : b.edge_b;
      const double share = d.dot(edge) / edge.squaredNorm();
      const double cell = edge.norm() / b.divisions[k];
      const double cells = share * b.divisions[k];
      on = on && cells * cell > -one_place && (b.divisions[k] - cells) * cell > -one_place;
      node = node && std::abs(cells - std::round(cells)) * cell < one_place;
      off -= share * edge;
    }
    if (on && !node && off.norm() < one_place) ++apart;
  }
  if (apart == 0) return;
  const auto name = [](const Panel& p, std::size_t i) { return p.name.empty() ? std::to_string(i + 1) : p.name; };
  v.warning(a.pos, joint_key("panel", a.name, one),
            std::to_string(apart) + " nodes of its edges lie on panel " + name(b, other) +
                " between the nodes of that, and are not joined to it; choose `divisions` so that nodes meet");
}

} // namespace

void validate_meetings(Validator& v) {
  const Machine& m = v.machine;
  const auto sound = [](const Member& x) { return (x.to - x.from).norm() >= one_place; };
  for (std::size_t i = 0; i < m.members.size(); ++i)
    for (std::size_t j = 0; j < m.members.size(); ++j) {
      if (i == j || !sound(m.members[i]) || !sound(m.members[j]) || tied(m, i, j)) continue;
      validate_ends(v, i, j);
      if (i < j && !m.members[i].tension_only && !m.members[j].tension_only) validate_crossing(v, i, j);
    }
  const auto whole = [](const Panel& p) { return p.edge_a.norm() >= one_place && p.edge_b.norm() >= one_place; };
  for (std::size_t i = 0; i < m.panels.size(); ++i)
    for (std::size_t j = 0; j < m.panels.size(); ++j)
      if (i != j && whole(m.panels[i]) && whole(m.panels[j])) validate_edges(v, i, j);
}

} // namespace bedbow
