// Members: their stations and elements, and what they are joined to on the way.
#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <limits>
#include <optional>

namespace bedbow::mesher {

namespace {

/// A position along a member.
struct Station {
  double s = 0;                          ///< from `from` [m]
  std::optional<Eigen::Vector3d> shared; ///< place of the node that it shares with what is joined there
};

/// Places whose nodes a member between its ends shares.
std::vector<Eigen::Vector3d> meeting_places(const Machine& machine) {
  std::vector<Eigen::Vector3d> out;
  for (const Member& m : machine.members) out.insert(out.end(), {m.from, m.to});
  for (const Panel& p : machine.panels) {
    const std::vector<Eigen::Vector3d> edge = edge_places(p);
    out.insert(out.end(), edge.begin(), edge.end());
  }
  if (!machine.own.joined) return out;
  const std::vector<bool> used = machine.own.used();
  for (std::size_t i = 0; i < used.size(); ++i)
    if (used[i]) out.push_back(machine.own.points[i]);
  return out;
}

/// Even divisions, where loads begin, end or act, and where something is joined.
std::vector<Station> member_stations(const Machine& machine, const Member& m,
                                     const std::vector<Eigen::Vector3d>& meeting) {
  const double length = (m.to - m.from).norm();
  const Eigen::Vector3d dir = (m.to - m.from) / length;
  std::vector<Station> all;
  for (int i = 0; i <= m.divisions; ++i) all.push_back({length * i / m.divisions, {}});
  const auto mark = [&](const Eigen::Vector3d& p, bool shared) {
    const double t = (p - m.from).dot(dir);
    if (t > one_place && t < length - one_place && (p - m.from - t * dir).norm() < one_place)
      all.push_back({t, shared ? std::optional(p) : std::nullopt});
  };
  for (const Load& l : machine.loads) {
    mark(l.from, false);
    mark(l.to, false);
  }
  for (const Eigen::Vector3d& p : meeting) mark(p, true);
  std::ranges::stable_sort(all, {}, &Station::s);
  std::vector<Station> out;
  for (const Station& s : all) {
    if (out.empty() || s.s - out.back().s >= one_place)
      out.push_back(s);
    else if (!out.back().shared && s.shared)
      out.back() = s; // keep the shared place, not the one beside it
  }
  out.back().s = length;
  return out;
}

/// A tension-only rod between its ends.
void add_rod(Builder& b, NodeFinder& finder, int index, const Eigen::Matrix3d& axes) {
  const Member& m = b.machine.members[index];
  Joint j;
  j.kind = JointKind::rod;
  j.index = index;
  j.name = m.name;
  j.axes = axes;
  for (auto [place, point] : {std::pair{&j.a, &m.from}, std::pair{&j.b, &m.to}})
    *place = {{PlaceTerm::on_arm(end_node(b, finder, *point), 1, Eigen::Vector3d::Zero())}, *point, Frame::fixed};
  j.stiffness[ux] = b.material(m.material).E * b.mesh.sections.back().props.A / (m.to - m.from).norm();
  j.sense[ux] = UnilateralType::tension;
  b.mesh.joints.push_back(std::move(j));
}

void add_member(Builder& b, NodeFinder& finder, int index, const std::vector<Eigen::Vector3d>& meeting) {
  const Member& m = b.machine.members[index];
  BarLayout l;
  l.owner = {Ref::Kind::member, BodyKind::bed, index};
  l.section = b.add_section(m.shape, b.material(m.material).nu);
  const Eigen::Matrix3d axes = beam_axes(m.to - m.from, m.up, "member " + m.name);
  if (m.tension_only) return add_rod(b, finder, index, axes);
  const std::vector<Station> stations = member_stations(b.machine, m, meeting);
  const Eigen::Vector3d dir = axes.row(0);
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const Station& s = stations[i];
    l.stations.push_back(s.s);
    if (i == 0 || i + 1 == stations.size())
      l.nodes.push_back(end_node(b, finder, i == 0 ? m.from : m.to));
    else
      l.nodes.push_back(s.shared ? end_node(b, finder, *s.shared) : b.add_node(m.from + dir * s.s, Frame::fixed));
  }
  l.first_element = static_cast<int>(b.mesh.beams.size());
  for (std::size_t i = 0; i + 1 < l.nodes.size(); ++i) {
    BeamElement e;
    e.nodes = {l.nodes[i], l.nodes[i + 1]};
    e.axes = axes;
    e.length = l.stations[i + 1] - l.stations[i];
    e.section = l.section;
    e.material = m.material;
    e.owner = l.owner;
    if (i == 0) e.release_a = m.release_from;
    if (i + 2 == l.nodes.size()) e.release_b = m.release_to;
    b.mesh.beams.push_back(e);
  }
  b.mesh.layouts.push_back(std::move(l));
}

/// How far a place is from the spot that carries it.
double distance(const Place& place) {
  Eigen::Vector3d rest = Eigen::Vector3d::Zero();
  for (const PlaceTerm& t : place.terms) rest += t.lever();
  return rest.norm();
}

bool has_node(const Place& place, int node) {
  return std::ranges::any_of(place.terms, [&](const PlaceTerm& t) { return t.node == node; });
}

/// Joins one end to each panel or part that it lies on between the nodes. Two that carry it by the same nodes, as
/// panels with a common edge do, count once.
void join_end(Builder& b, int member, const Eigen::Vector3d& at, int node, const std::vector<Ref>& carriers) {
  std::vector<Place> joined;
  for (const Ref& on : carriers) {
    std::optional<Place> place = place_between_nodes(b.machine, b.mesh, on, at);
    if (!place || distance(*place) > one_place || has_node(*place, node)) continue;
    const auto same = [&](const Place& other) {
      return std::ranges::all_of(place->terms, [&](const PlaceTerm& t) { return has_node(other, t.node); });
    };
    if (std::ranges::any_of(joined, same)) continue;
    joined.push_back(*place);
    Joint j;
    j.kind = JointKind::member_end;
    j.index = member;
    const Ref own{Ref::Kind::member, BodyKind::bed, member};
    j.name = b.machine.plain_name(own) + " on " + b.machine.plain_name(on);
    j.a = std::move(*place);
    j.b = {{PlaceTerm::on_arm(node, 1, Eigen::Vector3d::Zero())}, at, Frame::fixed};
    j.stiffness.fill(std::numeric_limits<double>::infinity());
    j.swapped = true; // the member, then what it stands on
    b.mesh.joints.push_back(std::move(j));
  }
}

} // namespace

void mesh_members(Builder& b, NodeFinder& finder) {
  const std::vector<Eigen::Vector3d> meeting = meeting_places(b.machine);
  for (std::size_t i = 0; i < b.machine.members.size(); ++i) add_member(b, finder, static_cast<int>(i), meeting);
}

void join_member_ends(Builder& b, const NodeFinder& finder) {
  std::vector<Ref> carriers;
  for (std::size_t i = 0; i < b.machine.panels.size(); ++i)
    carriers.push_back({Ref::Kind::panel, BodyKind::bed, static_cast<int>(i)});
  if (b.machine.own.joined)
    for (std::size_t i = 0; i < b.machine.own.parts.size(); ++i)
      carriers.push_back({Ref::Kind::own, BodyKind::bed, static_cast<int>(i)});
  for (std::size_t i = 0; i < b.machine.members.size(); ++i)
    for (const Eigen::Vector3d& at : {b.machine.members[i].from, b.machine.members[i].to})
      join_end(b, static_cast<int>(i), at, finder.find(at), carriers);
}

} // namespace bedbow::mesher
