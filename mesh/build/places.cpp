#include "mesh/build/places.h"

#include "mesh/build/stations.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

/// Middle of the overlap of two intervals, or of the gap between them.
double meeting(double a0, double a1, double b0, double b1) {
  return (std::max(a0, b0) + std::min(a1, b1)) / 2; // overlap and gap are the same pair of inner ends
}

} // namespace

SectionBox section_box(const Bar& bar, const Section& s) {
  return {bar.at + s.props.lower, bar.at + s.props.upper};
}

int main_node(const Place& place) {
  return std::max_element(place.terms.begin(), place.terms.end(),
                          [](const PlaceTerm& a, const PlaceTerm& b) { return a.weight < b.weight; })
      ->node;
}

const BarLayout& layout_of(const Mesh& mesh, const Ref& owner) {
  for (const BarLayout& l : mesh.layouts)
    if (l.owner == owner) return l;
  throw std::out_of_range("no such bar or member in the mesh");
}

Eigen::Vector3d complete_place(const Machine& m, const Mesh& mesh, const std::array<Ref, 2>& joins,
                               const GivenPoint& given) {
  Eigen::Vector3d at = given;
  std::vector<const Bar*> bars;
  std::vector<SectionBox> boxes;
  for (const Ref& r : joins)
    if (r.kind == Ref::Kind::bar) {
      bars.push_back(&m.bar(r));
      const BarLayout& l = layout_of(mesh, r);
      boxes.push_back(section_box(m.bar(r), mesh.sections[l.section]));
    }
  if (bars.empty()) return at;
  if (!std::isfinite(at.x())) {
    const Bar& a = *bars.front();
    const Bar& b = *bars.back();
    at.x() = (std::max(a.start, b.start) + std::min(a.end(), b.end())) / 2;
  }
  for (int k = 0; k < 2; ++k) {
    if (std::isfinite(at[k + 1])) continue;
    at[k + 1] = bars.size() == 1 ? bars[0]->at[k]
                                 : meeting(boxes[0].lower[k], boxes[0].upper[k], boxes[1].lower[k], boxes[1].upper[k]);
  }
  return at;
}

Place place_on_bar(const Machine& m, const Mesh& mesh, const Ref& ref, const Eigen::Vector3d& at) {
  const BarLayout& l = layout_of(mesh, ref);
  const Bar& bar = m.bar(ref);
  if (at.x() < bar.start - same_place || at.x() > bar.end() + same_place)
    throw std::invalid_argument("x = " + std::to_string(at.x() * 1e3) + " mm lies off " + m.name_of(ref));
  const double x = std::clamp(at.x(), l.stations.front(), l.stations.back());
  auto upper = std::lower_bound(l.stations.begin(), l.stations.end(), x - same_place);
  const auto i1 = static_cast<std::size_t>(upper - l.stations.begin());
  std::vector<std::pair<std::size_t, double>> along; // station and weight
  if (std::abs(l.stations[i1] - x) <= same_place) {
    along = {{i1, 1.0}};
  } else {
    const double t = (x - l.stations[i1 - 1]) / (l.stations[i1] - l.stations[i1 - 1]);
    along = {{i1 - 1, 1 - t}, {i1, t}};
  }
  std::vector<std::pair<std::size_t, double>> across = {{0, 1.0}};
  if (!l.across.empty()) {
    const double c = l.standing ? at.z() - bar.at.y() : at.y() - bar.at.x();
    const double s = std::clamp(c, l.across.front(), l.across.back());
    auto it = std::lower_bound(l.across.begin(), l.across.end(), s - same_place);
    const auto r1 = static_cast<std::size_t>(it - l.across.begin());
    if (std::abs(l.across[r1] - s) <= same_place) {
      across = {{r1, 1.0}};
    } else {
      const double t = (s - l.across[r1 - 1]) / (l.across[r1] - l.across[r1 - 1]);
      across = {{r1 - 1, 1 - t}, {r1, t}};
    }
  }
  Place p;
  p.at = at;
  for (auto [r, wr] : across)
    for (auto [i, wi] : along) {
      const int node = l.nodes[r * l.stations.size() + i];
      p.terms.push_back({node, wr * wi, at - mesh.nodes[node].x});
    }
  p.frame = ref.body == BodyKind::apron ? Frame::apron : Frame::fixed;
  return p;
}

namespace {

/// The two marks around a value (or the one it meets, or the end beyond which it lies), with their weights.
std::vector<std::pair<std::size_t, double>> between(const std::vector<double>& marks, double value) {
  const double v = std::clamp(value, marks.front(), marks.back());
  const auto i = static_cast<std::size_t>(std::lower_bound(marks.begin(), marks.end(), v - same_place) - marks.begin());
  if (std::abs(marks[i] - v) <= same_place) return {{i, 1.0}};
  const double t = (v - marks[i - 1]) / (marks[i] - marks[i - 1]);
  return {{i - 1, 1 - t}, {i, t}};
}

} // namespace

double finger_lift(const Machine& m, const Mesh& mesh, const FingerLayout& f) {
  const double middle = mesh.nodes[f.plate() ? f.nodes.front() : f.tip].x.z();
  return middle - m.fingers->thickness / 2 - (m.sheet ? m.sheet->thickness : 0);
}

Place place_on_finger(const Machine& m, const Mesh& mesh, const FingerLayout& f, const Eigen::Vector3d& place) {
  const Eigen::Vector3d at = place + finger_lift(m, mesh, f) * Eigen::Vector3d::UnitZ();
  Place p{{}, at, Frame::fixed};
  if (!f.plate()) {
    const int node = at.y() < m.nose.setback + m.nose.land / 4 ? f.tip : f.pad;
    p.terms.push_back({node, 1.0, at - mesh.nodes[node].x});
    return p;
  }
  for (auto [r, wr] : between(f.y, at.y()))
    for (auto [i, wi] : between(f.x, at.x())) {
      const int node = f.nodes[r * f.x.size() + i];
      p.terms.push_back({node, wr * wi, at - mesh.nodes[node].x});
    }
  return p;
}

std::optional<Place> nose_place(const Machine& m, const Mesh& mesh, double x, double y, double z) {
  const Eigen::Vector3d at(x, y, z);
  if (!m.fingers) return place_on_bar(m, mesh, {Ref::Kind::bar, BodyKind::clamp, m.nose.bar}, at);
  for (const FingerLayout& f : mesh.fingers) {
    if (x < f.from - same_place || x > f.to + same_place) continue;
    return place_on_finger(m, mesh, f, at);
  }
  return std::nullopt;
}

namespace {

/// The place on the nearest element of a part of the user's mesh, carried by its nodes in proportion. No terms: none.
Place find_on_own(const Mesh& mesh, const Ref& owner, const Eigen::Vector3d& at) {
  OwnNearest best;
  const auto keep = [&](OwnNearest found, const auto& nodes) {
    if (found.distance >= best.distance) return;
    best = std::move(found);
    for (int& p : best.points) p = nodes[static_cast<std::size_t>(p)];
  };
  const auto x = [&](int n) { return mesh.nodes[n].x; };
  // No point of a convex quad is further from a corner than the sum of both diagonals.
  const auto too_far = [&](const std::array<int, 4>& n) {
    const double size = std::max((x(n[2]) - x(n[0])).norm(), (x(n[3]) - x(n[1])).norm());
    return (at - x(n[0])).norm() - 2 * size > best.distance;
  };
  for (const BeamElement& e : mesh.beams)
    if (e.owner == owner) keep(nearest_on_line({x(e.nodes[0]), x(e.nodes[1])}, at), e.nodes);
  for (const ShellElement& e : mesh.shells)
    if (e.owner == owner && !too_far(e.nodes))
      keep(nearest_on_quad({x(e.nodes[0]), x(e.nodes[1]), x(e.nodes[2]), x(e.nodes[3])}, at), e.nodes);
  if (best.points.empty()) return {{}, at, Frame::fixed};
  Place p{{}, at, mesh.nodes[best.points.front()].frame};
  constexpr double nothing = 1e-12;
  for (std::size_t i = 0; i < best.points.size(); ++i)
    if (best.weights[i] > nothing) p.terms.push_back({best.points[i], best.weights[i], at - x(best.points[i])});
  return p;
}

/// The place on a panel's cell, or nothing off the panel.
std::optional<Place> find_on_panel(const Panel& panel, const Mesh& mesh, const Ref& owner, const Eigen::Vector3d& at) {
  constexpr double touching = 1e-6; // as members' ends meet [m]
  const Eigen::Vector3d d = at - panel.corner;
  const std::array<const Eigen::Vector3d*, 2> edges{&panel.edge_a, &panel.edge_b};
  std::array<int, 2> cell{};
  std::array<double, 2> in{}; // within the cell, 0 to 1
  Eigen::Vector3d off = d;
  for (std::size_t k = 0; k < 2; ++k) {
    const double share = d.dot(*edges[k]) / edges[k]->squaredNorm();
    off -= share * *edges[k];
    const double slack = touching / edges[k]->norm();
    if (share < -slack || share > 1 + slack) return std::nullopt;
    const double along = std::clamp(share, 0.0, 1.0) * panel.divisions[k];
    cell[k] = std::min(static_cast<int>(along), panel.divisions[k] - 1);
    in[k] = along - cell[k];
  }
  if (off.norm() > touching) return std::nullopt;
  const auto first = std::ranges::find(mesh.shells, owner, &ShellElement::owner); // row after row of cells along edge_a
  const ShellElement& e = *(first + cell[1] * panel.divisions[0] + cell[0]);
  const std::array<double, 4> weights{(1 - in[0]) * (1 - in[1]), in[0] * (1 - in[1]), in[0] * in[1],
                                      (1 - in[0]) * in[1]};
  Place p{{}, at, mesh.nodes[e.nodes[0]].frame};
  constexpr double nothing = 1e-12;
  for (std::size_t k = 0; k < 4; ++k)
    if (weights[k] > nothing) p.terms.push_back({e.nodes[k], weights[k], at - mesh.nodes[e.nodes[k]].x});
  return p;
}

} // namespace

std::optional<Place> place_between_nodes(const Machine& machine, const Mesh& mesh, const Ref& owner,
                                         const Eigen::Vector3d& at) {
  if (owner.kind == Ref::Kind::panel) return find_on_panel(machine.panels[owner.index], mesh, owner, at);
  if (owner.kind != Ref::Kind::own) return std::nullopt;
  Place p = find_on_own(mesh, owner, at);
  return p.terms.empty() ? std::nullopt : std::optional(std::move(p));
}

Place place_on_structure(const Mesh& mesh, const Ref& owner, const Eigen::Vector3d& at) {
  if (owner.kind == Ref::Kind::own) {
    Place p = find_on_own(mesh, owner, at);
    if (p.terms.empty()) throw std::invalid_argument("nothing at that place can carry it");
    return p;
  }
  int best = -1;
  double distance = std::numeric_limits<double>::infinity();
  const auto consider = [&](int node) {
    const double d = (mesh.nodes[node].x - at).squaredNorm();
    if (d < distance) {
      distance = d;
      best = node;
    }
  };
  for (const BeamElement& e : mesh.beams)
    if (e.owner == owner) std::for_each(e.nodes.begin(), e.nodes.end(), consider);
  for (const ShellElement& e : mesh.shells)
    if (e.owner == owner) std::for_each(e.nodes.begin(), e.nodes.end(), consider);
  if (best < 0) throw std::invalid_argument("nothing at that place can carry it");
  const Node& node = mesh.nodes[best];
  return {{{best, 1.0, at - node.x}}, at, node.frame};
}

} // namespace bedbow
