#include "mesh/build/places.h"

#include "mesh/build/stations.h"
#include "mesh/build/strips.h"
#include "mesh/machine/seat.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <stdexcept>
#include <tuple>
#include <utility>

namespace bedbow {

BarBox box_of(const Machine& m, const Mesh& mesh, const Ref& ref) {
  const Bar& bar = m.bar(ref);
  const SectionProperties& p = mesh.sections[layout_of(mesh, ref).section].props;
  return {bar.at + p.lower, bar.at + p.upper};
}

SideBoxes boxes_of(const Machine& m, const Mesh& mesh, const std::array<Ref, 2>& joins) {
  SideBoxes out;
  for (std::size_t i = 0; i < 2; ++i)
    if (joins[i].kind == Ref::Kind::bar) out[i] = box_of(m, mesh, joins[i]);
  return out;
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
  return complete_place(m, joins, boxes_of(m, mesh, joins), given);
}

namespace {

/// Nodes that carry a spot, with their weights.
using Carriers = std::vector<std::pair<int, double>>;

/// The two marks around a value (or the one it meets, or the end beyond which it lies), with their weights.
std::vector<std::pair<std::size_t, double>> between(const std::vector<double>& marks, double value) {
  const double v = std::clamp(value, marks.front(), marks.back());
  const auto i = static_cast<std::size_t>(std::lower_bound(marks.begin(), marks.end(), v - same_place) - marks.begin());
  if (std::abs(marks[i] - v) <= same_place) return {{i, 1.0}};
  const double t = (v - marks[i - 1]) / (marks[i] - marks[i - 1]);
  return {{i - 1, 1 - t}, {i, t}};
}

/// Nodes of a bar around x and, on a plate, around `across`.
Carriers carriers_on(const BarLayout& l, double x, double across) {
  Carriers out;
  const auto rows =
      l.across.empty() ? std::vector<std::pair<std::size_t, double>>{{0, 1.0}} : between(l.across, across);
  const auto along = between(l.stations, x);
  for (auto [r, wr] : rows)
    for (auto [i, wi] : along) out.emplace_back(l.nodes[r * l.stations.size() + i], wr * wi);
  return out;
}

/// Gauss's three points of an interval from -1/2 to 1/2, with their weights.
constexpr std::array<std::pair<double, double>, 3> gauss{
    {{-0.38729833462074170, 5.0 / 18}, {0, 8.0 / 18}, {0.38729833462074170, 5.0 / 18}}};

/// One point in the middle.
constexpr std::pair<double, double> point{0, 1};

std::span<const std::pair<double, double>> points_of(double size) {
  return size > same_place ? std::span(gauss) : std::span(&point, 1);
}

/// Points across a seat from its middle, as fractions of its size, with their weights: Gauss's, or where it is a line
/// that holds the sections of all fibres, every row of nodes on it by the trapezoidal rule.
std::vector<std::pair<double, double>> points_across(const std::vector<double>& rows, double middle, double size,
                                                     bool line) {
  const auto few = points_of(size);
  if (!line || size <= same_place) return {few.begin(), few.end()};
  std::vector<double> at{-0.5};
  for (double r : rows)
    if (std::abs(r - middle) < size / 2 - same_place) at.push_back((r - middle) / size);
  at.push_back(0.5);
  std::vector<std::pair<double, double>> out;
  for (std::size_t i = 0; i < at.size(); ++i)
    out.emplace_back(at[i], ((i + 1 < at.size() ? at[i + 1] : at[i]) - (i > 0 ? at[i - 1] : at[i])) / 2);
  return out;
}

/// An interval about a value, as far as it lies within the marks: its middle and its size.
std::pair<double, double> within(const std::vector<double>& marks, double value, double size) {
  const double v = std::clamp(value, marks.front(), marks.back());
  const double lower = std::max(v - size / 2, marks.front()), upper = std::min(v + size / 2, marks.back());
  return {(lower + upper) / 2, upper - lower};
}

/// Sums spots into one place, each node once.
class PlaceSum {
public:
  explicit PlaceSum(const Mesh& mesh)
      : mesh_(mesh) {}
  /// A spot that represents `share` of the patch.
  void add(const Eigen::Vector3d& spot, double share, const Carriers& carriers) {
    middle_ += share * spot;
    for (auto [node, weight] : carriers) {
      auto term = std::ranges::find(terms_, node, &PlaceTerm::node);
      if (term == terms_.end()) term = terms_.insert(terms_.end(), {node});
      term->weight += share * weight;
      term->movement += share * weight * carry(spot - mesh_.nodes[static_cast<std::size_t>(node)].x);
    }
  }
  /// The place `at`, which a rigid arm joins to the patch's middle. Shares must add up to 1.
  [[nodiscard]] Place take(const Eigen::Vector3d& at, Frame frame) && {
    for (PlaceTerm& t : terms_) t.movement = carry(at - middle_) * t.movement;
    return {std::move(terms_), at, frame};
  }

private:
  const Mesh& mesh_;
  Eigen::Vector3d middle_ = Eigen::Vector3d::Zero();
  std::vector<PlaceTerm> terms_;
};

} // namespace

Place place_on_bar(const Machine& m, const Mesh& mesh, const Ref& ref, const Eigen::Vector3d& at,
                   const Eigen::Vector2d& patch) {
  const BarLayout& l = layout_of(mesh, ref);
  const Bar& bar = m.bar(ref);
  if (at.x() < bar.start - same_place || at.x() > bar.end() + same_place)
    throw std::invalid_argument("x = " + std::to_string(at.x() * 1e3) + " mm lies off " + m.name_of(ref));
  const Frame frame = ref.body == BodyKind::apron ? Frame::apron : Frame::fixed;
  if (l.first_strip >= 0) {
    const double half = std::max(bar.shape.width, bar.shape.height) / 2;
    const auto [x, along] = within(l.stations, at.x(), patch.x());
    const auto [c, across] = within({-half, half}, l.standing ? at.z() - bar.at.y() : at.y() - bar.at.x(), patch.y());
    StripPlaceSum sum(m, mesh, l);
    for (auto [gx, wx] : points_of(along))
      for (auto [gc, wc] : points_of(across)) sum.add(x + gx * along, c + gc * across, wx * wc);
    return std::move(sum).take(at, frame);
  }
  // At the end of a beam a patch shrinks about its middle: cut off there, it would stiffen the end.
  const double beside = std::min(at.x() - l.stations.front(), l.stations.back() - at.x());
  const auto [x, along] =
      within(l.stations, at.x(), l.across.empty() ? std::clamp(patch.x(), 0.0, std::max(2 * beside, 0.0)) : patch.x());
  double c = 0, across = 0;
  if (!l.across.empty())
    std::tie(c, across) = within(l.across, l.standing ? at.z() - bar.at.y() : at.y() - bar.at.x(), patch.y());
  PlaceSum sum(mesh);
  for (auto [gx, wx] : points_of(along))
    for (auto [gc, wc] : points_across(l.across, c, across, along <= same_place)) {
      const double u = x + gx * along, v = c + gc * across;
      const Eigen::Vector3d spot(u, bar.at.x() + (l.standing ? 0 : v), bar.at.y() + (l.standing ? v : 0));
      sum.add(spot, wx * wc, carriers_on(l, u, v));
    }
  return std::move(sum).take(at, frame);
}

double finger_lift(const Machine& m, const Mesh& mesh, const FingerLayout& f) {
  const double middle = mesh.nodes[f.plate() ? f.nodes.front() : f.tip].x.z();
  return middle - m.fingers->thickness / 2 - (m.sheet ? m.sheet->thickness : 0);
}

Place place_on_finger(const Machine& m, const Mesh& mesh, const FingerLayout& f, const Eigen::Vector3d& place) {
  const Eigen::Vector3d at = place + finger_lift(m, mesh, f) * Eigen::Vector3d::UnitZ();
  Place p{{}, at, Frame::fixed};
  if (!f.plate()) {
    const int node = at.y() < m.nose.setback + m.nose.land / 4 ? f.tip : f.pad;
    p.terms.push_back(PlaceTerm::on_arm(node, 1, at - mesh.nodes[node].x));
    return p;
  }
  for (auto [r, wr] : between(f.y, at.y()))
    for (auto [i, wi] : between(f.x, at.x())) {
      const int node = f.nodes[r * f.x.size() + i];
      p.terms.push_back(PlaceTerm::on_arm(node, wr * wi, at - mesh.nodes[node].x));
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

/// The spot of a part's elements nearest to a place.
struct NearestSpot {
  Carriers carriers; ///< none where the part has no elements
  Eigen::Vector3d at = Eigen::Vector3d::Zero();
  Eigen::Vector3d along = Eigen::Vector3d::Zero();  ///< unit, in the element: as far along x as it goes
  Eigen::Vector3d across = Eigen::Vector3d::Zero(); ///< unit, in a shell across that; zero on a line
  double thickness = 0;                             ///< of a shell
};

NearestSpot nearest_spot(const Mesh& mesh, const Ref& owner, const Eigen::Vector3d& at) {
  UserMeshNearest best;
  const BeamElement* line = nullptr;
  const ShellElement* quad = nullptr;
  const auto x = [&](int n) { return mesh.nodes[n].x; };
  const auto keep = [&](UserMeshNearest found, const auto& nodes) {
    if (found.distance >= best.distance) return false;
    best = std::move(found);
    for (int& p : best.points) p = nodes[static_cast<std::size_t>(p)];
    return true;
  };
  // No point of a convex quad is further from a corner than the sum of both diagonals.
  const auto too_far = [&](const std::array<int, 4>& n) {
    const double size = std::max((x(n[2]) - x(n[0])).norm(), (x(n[3]) - x(n[1])).norm());
    return (at - x(n[0])).norm() - 2 * size > best.distance;
  };
  for (const BeamElement& e : mesh.beams)
    if (e.owner == owner && keep(nearest_on_line({x(e.nodes[0]), x(e.nodes[1])}, at), e.nodes)) line = &e;
  for (const ShellElement& e : mesh.shells)
    if (e.owner == owner && !too_far(e.nodes) &&
        keep(nearest_on_quad({x(e.nodes[0]), x(e.nodes[1]), x(e.nodes[2]), x(e.nodes[3])}, at), e.nodes))
      quad = &e;
  NearestSpot out;
  constexpr double nothing = 1e-12;
  for (std::size_t i = 0; i < best.points.size(); ++i) {
    out.at += best.weights[i] * x(best.points[i]);
    if (best.weights[i] > nothing) out.carriers.emplace_back(best.points[i], best.weights[i]);
  }
  if (quad) {
    const auto& n = quad->nodes;
    std::tie(out.along, out.across) = seat_directions((x(n[2]) - x(n[0])).cross(x(n[3]) - x(n[1])));
    out.thickness = quad->thickness;
  } else if (line) {
    out.along = line->axes.row(0);
  }
  return out;
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
    if (weights[k] > nothing)
      p.terms.push_back(PlaceTerm::on_arm(e.nodes[k], weights[k], at - mesh.nodes[e.nodes[k]].x));
  return p;
}

} // namespace

std::optional<Place> place_between_nodes(const Machine& machine, const Mesh& mesh, const Ref& owner,
                                         const Eigen::Vector3d& at) {
  if (owner.kind == Ref::Kind::panel) return find_on_panel(machine.panels[owner.index], mesh, owner, at);
  if (owner.kind != Ref::Kind::own || nearest_spot(mesh, owner, at).carriers.empty()) return std::nullopt;
  return place_on_structure(mesh, owner, at);
}

Place place_on_structure(const Mesh& mesh, const Ref& owner, const Eigen::Vector3d& at, const Patch& patch) {
  const NearestSpot middle = nearest_spot(mesh, owner, at);
  if (middle.carriers.empty()) throw std::invalid_argument("nothing at that place can carry it");
  const double spread = patch.spreads ? middle.thickness : 0;
  const Eigen::Vector3d along = (patch.along + spread) * middle.along, across = (patch.across + spread) * middle.across;
  struct Spot {
    NearestSpot on;
    double share;
  };
  std::vector<Spot> spots;
  double covered = 0;
  for (auto [gx, wx] : points_of(along.norm()))
    for (auto [gc, wc] : points_of(across.norm())) {
      const Eigen::Vector3d q = middle.at + gx * along + gc * across;
      NearestSpot on = nearest_spot(mesh, owner, q);
      if ((on.at - q).norm() > off_the_part) continue; // beyond an edge or over a hole; never the middle
      covered += wx * wc;
      spots.push_back({std::move(on), wx * wc});
    }
  PlaceSum sum(mesh);
  for (const Spot& s : spots) sum.add(s.on.at, s.share / covered, s.on.carriers);
  return std::move(sum).take(at, mesh.nodes[static_cast<std::size_t>(middle.carriers.front().first)].frame);
}

} // namespace bedbow
