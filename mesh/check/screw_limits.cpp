#include "mesh/check/screw_limits.h"

#include "mesh/build/screw_faces.h"
#include "mesh/build/welded_sections.h"
#include "mesh/build/welds.h"

#include <algorithm>
#include <vector>

namespace bedbow {

namespace {

Weld weld_of(const Screws& s) {
  Weld w;
  static_cast<JointBase&>(w) = s;
  const auto [first, last] = std::minmax_element(s.x.begin(), s.x.end());
  const double half = s.x.size() > 1 ? (*last - *first) / static_cast<double>(s.x.size() - 1) / 2 : 0;
  w.from = *first - half;
  w.to = *last + half;
  return w;
}

/// Groups of bars that are connected along x, as lists.
class Joined {
public:
  /// \return false where the two were already connected.
  bool join(const std::array<Ref, 2>& joins) {
    const std::size_t a = group(joins[0]);
    const std::size_t b = group(joins[1]);
    if (a == b) return false;
    groups_[a].insert(groups_[a].end(), groups_[b].begin(), groups_[b].end());
    groups_.erase(groups_.begin() + static_cast<std::ptrdiff_t>(b));
    return true;
  }

private:
  std::size_t group(const Ref& bar) {
    for (std::size_t i = 0; i < groups_.size(); ++i)
      if (std::find(groups_[i].begin(), groups_[i].end(), bar) != groups_[i].end()) return i;
    groups_.push_back({bar});
    return groups_.size() - 1;
  }
  std::vector<std::vector<Ref>> groups_;
};

/// Bars can be welded along a line; where a mesh is screwed on, each screw is made as stiff as a weld instead.
bool between_bars(const Screws& s) {
  return std::ranges::all_of(s.joins, [](const Ref& r) { return r.kind == Ref::Kind::bar; });
}

/// Stiffness of a screw that holds like a weld as wide as it [N/m].
double welded_stiffness(const Machine& machine, const Mesh& mesh, const Screws& s) {
  double E = 0;
  for (const ScrewSide& side : screw_faces(machine, mesh, s).side)
    E = std::max(E, machine.materials.at(static_cast<std::size_t>(side.material)).E);
  return seam_stiffness(E, s.diameter);
}

/// Erases joints; rows of pads go on standing between the same rows.
template <class Which> void erase_joints(std::vector<Joint>& joints, Which which) {
  std::vector<int> now;
  int kept = 0;
  for (const Joint& j : joints) now.push_back(which(j) ? -1 : kept++);
  std::erase_if(joints, which);
  for (Joint& j : joints)
    if (j.between)
      for (int* row : {&j.between->front, &j.between->rear}) *row = now[static_cast<std::size_t>(*row)];
}

} // namespace

Mesh without_slip(const Machine& machine, Mesh mesh) {
  erase_joints(mesh.joints,
               [&](const Joint& j) { return j.kind == JointKind::screw && between_bars(machine.screws[j.index]); });
  for (Joint& j : mesh.joints) {
    if (j.kind != JointKind::screw) continue;
    const double k = welded_stiffness(machine, mesh, machine.screws[j.index]);
    const double roll = j.stiffness[rx] / j.stiffness[j.normal]; // of the width in contact
    j.stiffness = {k, k, k, k * roll, 0, 0};
  }
  std::vector<Weld> welds = machine.welds;
  for (const Screws& s : machine.screws)
    if (!s.x.empty() && between_bars(s)) {
      welds.push_back(weld_of(s));
      add_weld(machine, welds.back(), -1, mesh);
    }
  measure_welded_sections(machine, welds, mesh);
  return mesh;
}

Mesh without_slip_rolling(const Machine& machine, Mesh mesh) {
  for (Joint& j : mesh.joints) {
    if (j.kind != JointKind::screw) continue;
    const Screws& s = machine.screws[j.index];
    const double k = welded_stiffness(machine, mesh, s);
    for (const int axis : {ux, uy, uz})
      if (axis != j.normal) j.stiffness[axis] = k;
  }
  return mesh;
}

Mesh without_shear(const Machine& machine, Mesh mesh) {
  Joined joined;
  for (const Weld& w : machine.welds) joined.join(w.joins);
  std::vector<int> kept(machine.screws.size(), -1); // by row: the screw that still holds along x
  for (std::size_t i = 0; i < machine.screws.size(); ++i)
    if (joined.join(machine.screws[i].joins)) kept[i] = static_cast<int>(machine.screws[i].x.size() / 2);
  for (Joint& j : mesh.joints)
    if (j.kind == JointKind::screw && j.part != kept[j.index]) j.stiffness[ux] = 0;
  return mesh;
}

} // namespace bedbow
