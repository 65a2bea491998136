#include "solver/assembly/dof_map.h"

#include "solver/linear/dense.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <numeric>
#include <set>

namespace bedbow {

namespace {

/// Union-find with the lowest index as the root.
class Groups {
public:
  explicit Groups(std::size_t n)
      : parent_(n) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }
  int root(int i) {
    while (parent_[i] != i) {
      int& p = parent_[i];
      p = parent_[p];
      i = p;
    }
    return i;
  }
  void join(int a, int b) {
    a = root(a);
    b = root(b);
    if (a != b) parent_[std::max(a, b)] = std::min(a, b);
  }

private:
  std::vector<int> parent_;
};

void link_nodes(const Mesh& mesh, DofMap& map) {
  const std::size_t n = mesh.nodes.size();
  Groups groups(n);
  for (const auto& l : mesh.rigid_links) groups.join(l[0], l[1]);
  // A held node becomes the reference of its group, so that its holds need no arm.
  std::vector<int> ref(n, -1);
  for (int dof : mesh.held_dofs) {
    int& r = ref[groups.root(dof / 6)];
    if (r < 0) r = dof / 6;
  }
  map.links.resize(n);
  for (std::size_t i = 0; i < n; ++i) {
    const int root = groups.root(static_cast<int>(i));
    const int r = ref[root] >= 0 ? ref[root] : root;
    map.links[i] = {r, mesh.nodes[i].x - mesh.nodes[r].x};
  }
  for (int dof : mesh.held_dofs) {
    const NodeLink& l = map.links[dof / 6];
    if (l.ref == dof / 6)
      map.constrained.push_back(dof);
    else
      map.offset_constraints.push_back(dof);
  }
}

void find_components(const Mesh& mesh, DofMap& map) {
  Groups groups(mesh.nodes.size());
  for (std::size_t i = 0; i < map.links.size(); ++i) groups.join(static_cast<int>(i), map.links[i].ref);
  for (const auto& e : mesh.beams) groups.join(e.nodes[0], e.nodes[1]);
  for (const StripElement& s : mesh.strips)
    for (int n : nodes_of(mesh, s)) groups.join(mesh.beams[s.beam].nodes[0], n);
  for (const auto& e : mesh.shells)
    for (std::size_t k = 1; k < 4; ++k) groups.join(e.nodes[0], e.nodes[k]);
  for (const Joint& j : mesh.joints) {
    if (is_bonded(j)) groups.join(j.a.terms.front().node, j.b.terms.front().node);
  }
  std::vector<int> number(mesh.nodes.size(), -1);
  map.substructure.resize(mesh.nodes.size());
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
    const int root = groups.root(static_cast<int>(i));
    int& c = number[root];
    if (c < 0) {
      c = static_cast<int>(map.substructures.size());
      map.substructures.emplace_back();
    }
    map.substructure[i] = c;
    if (map.links[i].ref == static_cast<int>(i)) map.substructures[c].nodes.push_back(static_cast<int>(i));
  }
}

/// Names components as a builder would: a body when it contains all of its bars, else the bars.
void name_components(const Machine& machine, const Mesh& mesh, DofMap& map) {
  std::vector<std::vector<Ref>> owners(map.substructures.size());
  const auto note = [&](int node, const Ref& owner) {
    auto& list = owners[map.substructure[node]];
    if (std::find(list.begin(), list.end(), owner) == list.end()) list.push_back(owner);
  };
  for (const BarLayout& l : mesh.layouts)
    if (!l.nodes.empty()) note(l.nodes.front(), l.owner);
  // A panel is connected; a part of the user's mesh may be in pieces.
  Ref last_panel;
  for (const ShellElement& e : mesh.shells) {
    const bool own = e.owner.kind == Ref::Kind::own;
    if (!own && (e.owner.kind != Ref::Kind::panel || e.owner == last_panel)) continue;
    last_panel = e.owner;
    note(e.nodes[0], e.owner);
  }
  for (std::size_t c = 0; c < map.substructures.size(); ++c) {
    Substructure& comp = map.substructures[c];
    std::string name;
    bool bars_only = true;
    std::set<BodyKind> done;
    for (const Ref& r : owners[c]) {
      std::string part = machine.name_of(r);
      if (r.kind == Ref::Kind::bar) {
        const auto whole = std::count_if(owners[c].begin(), owners[c].end(),
                                         [&](const Ref& o) { return o.kind == Ref::Kind::bar && o.body == r.body; });
        if (static_cast<std::size_t>(whole) == machine.body(r.body).bars.size()) {
          if (!done.insert(r.body).second) continue;
          part = to_string(r.body);
        }
        bars_only = bars_only && machine.bar(r).model != BarModel::plate;
      } else {
        bars_only = false;
      }
      name += (name.empty() ? "" : " with ") + part;
    }
    comp.name = name.empty() ? "part" : name;
    comp.banded_by_station = bars_only;
    comp.frame = mesh.nodes[comp.nodes.front()].frame;
  }
}

/// Row of a dof for the rigid-body modes (translation, rotation about centre): the displacement along the dof.
Eigen::Matrix<double, 1, 6> rigid_row(const Eigen::Vector3d& x, const Eigen::Vector3d& centre, int dof) {
  Eigen::Matrix<double, 1, 6> row = Eigen::Matrix<double, 1, 6>::Zero();
  const Eigen::Vector3d d = Eigen::Vector3d::Unit(dof % 3);
  if (dof < 3) {
    row.head<3>() = d;
    row.tail<3>() = (x - centre).cross(d);
  } else {
    row.tail<3>() = d;
  }
  return row;
}

/// Rigid-body modes that the holds leave: null space of the held rows. Lengths scale with the component's size, so that
/// translations and rotations have equal weight.
Eigen::MatrixXd free_movements(const Mesh& mesh, const Substructure& comp, const std::vector<int>& held, double size,
                               bool plane) {
  std::vector<int> allowed;
  for (int k = 0; k < 6; ++k)
    if (moves(plane, k)) allowed.push_back(k);
  Eigen::MatrixXd rows(static_cast<Eigen::Index>(held.size()), static_cast<Eigen::Index>(allowed.size()));
  for (std::size_t i = 0; i < held.size(); ++i) {
    const auto r = rigid_row(mesh.nodes[held[i] / 6].x, comp.centre, held[i] % 6);
    for (std::size_t k = 0; k < allowed.size(); ++k)
      rows(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(k)) = r[allowed[k]] / (allowed[k] < 3 ? 1 : size);
  }
  Eigen::MatrixXd basis;
  if (held.empty()) {
    basis =
        Eigen::MatrixXd::Identity(static_cast<Eigen::Index>(allowed.size()), static_cast<Eigen::Index>(allowed.size()));
  } else {
    const RightSingular svd = right_singular(rows.transpose() * rows);
    Eigen::Index rank = 0;
    while (rank < svd.values.size() && svd.values[rank] > 1e-12 * svd.values[0]) ++rank;
    basis = svd.vectors.rightCols(static_cast<Eigen::Index>(allowed.size()) - rank);
  }
  Eigen::MatrixXd out = Eigen::MatrixXd::Zero(6, basis.cols());
  for (std::size_t k = 0; k < allowed.size(); ++k)
    out.row(allowed[k]) = basis.row(static_cast<Eigen::Index>(k)) / (allowed[k] < 3 ? 1 : size);
  return out;
}

/// One dof per remaining rigid-body mode, chosen so that anchoring them removes all of these.
std::vector<int> choose_anchors(const Mesh& mesh, const DofMap& map, const Substructure& comp,
                                const std::vector<char>& is_held) {
  const Eigen::Index r = comp.rigid.cols();
  if (r == 0) return {};
  // The middle node and, where holds take some of its dofs, the ends.
  std::vector<int> moving;
  std::ranges::copy_if(comp.nodes, std::back_inserter(moving), [&](int n) { return mesh.nodes[n].moves(); });
  const std::vector<int> candidates = {moving[moving.size() / 2], moving.front(), moving.back()};
  std::vector<int> dofs;
  Eigen::MatrixXd rows(0, r);
  for (int node : candidates)
    for (int k = 0; k < 6; ++k) {
      const int dof = 6 * node + k;
      if (!moves(map.plane, k) || is_held[dof]) continue;
      if (static_cast<Eigen::Index>(dofs.size()) == r) break;
      Eigen::MatrixXd tried(rows.rows() + 1, r);
      tried << rows, rigid_row(mesh.nodes[node].x, comp.centre, k) * comp.rigid;
      if (rank_of(tried, 1e-9) < tried.rows()) continue;
      rows = tried;
      dofs.push_back(dof);
    }
  return dofs;
}

void number_unknowns(const Mesh& mesh, DofMap& map) {
  std::vector<char> is_held(6 * mesh.nodes.size(), 0);
  for (int d : map.constrained) is_held[d] = 1;
  map.dofs.assign(mesh.nodes.size(), {-1, -1, -1, -1, -1, -1});
  std::vector<std::vector<int>> held_of(map.substructures.size());
  for (int d : map.constrained) held_of[map.substructure[d / 6]].push_back(d);
  for (std::size_t c = 0; c < map.substructures.size(); ++c) {
    Substructure& comp = map.substructures[c];
    if (comp.banded_by_station)
      std::stable_sort(comp.nodes.begin(), comp.nodes.end(),
                       [&](int a, int b) { return mesh.nodes[a].x.x() < mesh.nodes[b].x.x(); });
    Eigen::Vector3d lower = mesh.nodes[comp.nodes[0]].x;
    Eigen::Vector3d upper = lower;
    for (int n : comp.nodes) {
      lower = lower.cwiseMin(mesh.nodes[n].x);
      upper = upper.cwiseMax(mesh.nodes[n].x);
    }
    comp.centre = (lower + upper) / 2;
    const double size = std::max((upper - lower).norm(), 1e-3);
    comp.rigid = free_movements(mesh, comp, held_of[c], size, map.plane);
    // Anchors are also marked as held: components share no nodes, so the marks never collide.
    for (int d : choose_anchors(mesh, map, comp, is_held)) is_held[d] = 1;
    for (int n : comp.nodes)
      for (int k = 0; k < 6; ++k)
        if (map.has(n, k) && !is_held[6 * n + k]) map.dofs[n][k] = comp.size++;
  }
}

} // namespace

bool moves(bool plane, int dof) {
  return !plane || dof == ux || dof == uz || dof == ry;
}

bool DofMap::has(int node, int dof) const {
  const int count = amplitudes[static_cast<std::size_t>(node)];
  return count < 0 ? moves(plane, dof) : dof < count;
}

DofMap make_dof_map(const Machine& machine, const Mesh& mesh) {
  DofMap map;
  map.plane = machine.solve.dimension == 2;
  for (const Node& n : mesh.nodes) map.amplitudes.push_back(static_cast<signed char>(n.amplitudes));
  link_nodes(mesh, map);
  find_components(mesh, map);
  name_components(machine, mesh, map);
  number_unknowns(mesh, map);
  return map;
}

} // namespace bedbow
