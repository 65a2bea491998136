#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"
#include "mesh/build/stations.h"
#include "mesh/machine/holds.h"

#include <Eigen/Geometry>

#include <array>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace bedbow::mesher {

namespace {

constexpr double near = one_place; // ends within a thousandth of a millimetre coincide

std::string point_text(const Eigen::Vector3d& p) {
  char text[96];
  std::snprintf(text, sizeof text, "(%.4g, %.4g, %.4g) mm", p.x() * 1e3, p.y() * 1e3, p.z() * 1e3);
  return text;
}

void add_panel(Builder& b, NodeFinder& finder, std::size_t index) {
  const Panel& p = b.machine.panels[index];
  const int na = p.divisions[0];
  const int nb = p.divisions[1];
  std::vector<int> grid;
  for (int j = 0; j <= nb; ++j)
    for (int i = 0; i <= na; ++i) {
      const Eigen::Vector3d at = p.corner + p.edge_a * (double(i) / na) + p.edge_b * (double(j) / nb);
      // Inner nodes are the panel's own; those of its edges meet neighbours, members and bars.
      const bool edge = i == 0 || j == 0 || i == na || j == nb;
      grid.push_back(edge ? end_node(b, finder, at) : b.add_node(at, Frame::fixed));
      if (!edge) finder.add(grid.back(), at);
    }
  for (int j = 0; j < nb; ++j)
    for (int i = 0; i < na; ++i) {
      const auto at = [&](int c, int r) { return grid[r * (na + 1) + c]; };
      ShellElement e;
      e.nodes = {at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)};
      e.thickness = p.thickness;
      e.material = p.material;
      e.owner = {Ref::Kind::panel, BodyKind::bed, static_cast<int>(index)};
      b.mesh.shells.push_back(e);
    }
}

/// Members, panels and meshes that join the apron turn with it; they can't also join a part that stays.
void turn_with_apron(Builder& b, std::size_t first_node) {
  bool changed = true;
  const auto spread = [&](int i, int j) {
    Node& p = b.mesh.nodes[i];
    Node& q = b.mesh.nodes[j];
    if (p.frame == q.frame) return;
    const int fixed = p.frame == Frame::fixed ? i : j;
    if (static_cast<std::size_t>(fixed) < first_node)
      throw std::invalid_argument("a member, panel or mesh at " + point_text(b.mesh.nodes[fixed].x) +
                                  " joins the apron, which swings, to a part that does not; use a tie or hinge there");
    b.mesh.nodes[fixed].frame = Frame::apron;
    changed = true;
  };
  while (changed) {
    changed = false;
    for (const auto& l : b.mesh.rigid_links) spread(l[0], l[1]);
    for (const Joint& j : b.mesh.joints)
      if (j.kind == JointKind::member_end)
        for (const PlaceTerm& t : j.a.terms) spread(t.node, j.b.terms.front().node);
    for (const auto& e : b.mesh.beams) spread(e.nodes[0], e.nodes[1]);
    for (const auto& e : b.mesh.shells)
      for (std::size_t k = 1; k < 4; ++k) spread(e.nodes[0], e.nodes[k]);
  }
  for (Joint& j : b.mesh.joints)
    for (Place* p : {&j.a, &j.b})
      if (!p->ground()) p->frame = b.mesh.nodes[p->terms.front().node].frame;
}

void add_holds(Builder& b, std::size_t first_node) {
  std::vector<std::array<bool, 6>> held(b.mesh.nodes.size());
  for (const Hold& h : b.machine.holds) {
    if (h.set >= 0) {
      for (int p : b.machine.own.sets.at(h.set).points)
        for (std::size_t k = 0; k < 6; ++k) held[b.mesh.own_nodes.at(p)][k] |= h.holds[k];
      continue;
    }
    bool found = false;
    for (std::size_t n = first_node; n < b.mesh.nodes.size(); ++n) {
      if (!on_hold(h, b.mesh.nodes[n].x)) continue;
      found = true;
      for (std::size_t k = 0; k < 6; ++k) held[n][k] |= h.holds[k];
    }
    if (!found)
      throw std::invalid_argument(
          "[[hold]] at " + point_text(h.from) +
          " is at no node of a member, panel or mesh; place it on an end, a division, an edge or a point");
  }
  for (std::size_t n = first_node; n < held.size(); ++n)
    for (std::size_t k = 0; k < 6; ++k)
      if (held[n][k]) b.mesh.held_dofs.push_back(static_cast<int>(6 * n + k));
}

} // namespace

Eigen::Matrix3d beam_axes(const Eigen::Vector3d& along, Eigen::Vector3d up, const std::string& what) {
  const Eigen::Vector3d x = along.normalized();
  if (!up.allFinite()) up = std::abs(x.z()) > 1 - 1e-9 ? Eigen::Vector3d::UnitY() : Eigen::Vector3d::UnitZ();
  Eigen::Vector3d z = up - up.dot(x) * x;
  if (z.norm() < 1e-9 * up.norm())
    throw std::invalid_argument(what + ": `up` points along it; give a direction across it");
  z.normalize();
  Eigen::Matrix3d axes;
  axes.row(0) = x;
  axes.row(1) = z.cross(x);
  axes.row(2) = z;
  return axes;
}

int end_node(Builder& b, NodeFinder& finder, const Eigen::Vector3d& at) {
  if (const int known = finder.find(at); known >= 0) return known;
  const int node = b.add_node(at, Frame::fixed);
  finder.add(node, at);
  if (const auto bar = bar_at(b, at)) {
    b.mesh.rigid_links.push_back({main_node(place_on_bar(b.machine, b.mesh, *bar, at)), node});
  }
  return node;
}

std::optional<Ref> bar_at(const Builder& b, const Eigen::Vector3d& at) {
  for (const BarLayout& l : b.mesh.layouts) {
    if (l.owner.kind != Ref::Kind::bar) continue;
    const Bar& bar = b.machine.bar(l.owner);
    if (at.x() < bar.start - near || at.x() > bar.end() + near) continue;
    const BarBox box = box_of(b.machine, b.mesh, l.owner);
    const Eigen::Vector2d yz(at.y(), at.z());
    if ((yz.array() >= box.lower.array() - near).all() && (yz.array() <= box.upper.array() + near).all())
      return l.owner;
  }
  return std::nullopt;
}

std::vector<Eigen::Vector3d> edge_places(const Panel& p) {
  std::vector<Eigen::Vector3d> out;
  for (int i = 0; i <= p.divisions[0]; ++i)
    for (double t : {0.0, 1.0}) out.emplace_back(p.corner + p.edge_a * (double(i) / p.divisions[0]) + p.edge_b * t);
  for (int j = 1; j < p.divisions[1]; ++j)
    for (double t : {0.0, 1.0}) out.emplace_back(p.corner + p.edge_b * (double(j) / p.divisions[1]) + p.edge_a * t);
  return out;
}

std::vector<double> structure_stations(const Builder& b) {
  std::vector<double> x;
  const auto want = [&](const Eigen::Vector3d& at) {
    if (bar_at(b, at)) x.push_back(at.x());
  };
  for (const Member& m : b.machine.members) {
    want(m.from);
    want(m.to);
  }
  for (const Panel& p : b.machine.panels)
    for (const Eigen::Vector3d& at : edge_places(p)) want(at);
  if (b.machine.own.joined)
    for (const Eigen::Vector3d& p : b.machine.own.points) want(p);
  return x;
}

void mesh_structure(Builder& b) {
  if (b.machine.members.empty() && b.machine.panels.empty() && !b.machine.own.present()) return;
  const std::size_t first_node = b.mesh.nodes.size();
  NodeFinder finder(near);
  for (std::size_t i = 0; i < b.machine.panels.size(); ++i) add_panel(b, finder, i);
  mesh_members(b, finder);
  mesh_own(b, finder);
  join_member_ends(b, finder);
  turn_with_apron(b, first_node);
  add_holds(b, first_node);
}

} // namespace bedbow::mesher
