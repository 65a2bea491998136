/// \file
/// One loop over everything that has mass, used by self-weight, the mass matrix and the total in the results.
#pragma once

#include "solver/assembly/mesh_elements.h"

#include <Eigen/Geometry>

namespace bedbow {

/// One item with mass.
struct MassItem {
  enum class Kind { beam, shell, rod };
  Kind kind = Kind::beam;
  int index = 0;         ///< into Mesh::beams, Mesh::shells or, of a rod, Mesh::joints
  int material = 0;      ///< index into Machine::materials
  double per_extent = 0; ///< mass per length of a beam or rod [kg/m], per area of a shell [kg/m^2]; 0: no density known
  double extent = 0;     ///< length [m] or area [m^2]
  [[nodiscard]] double mass() const { return per_extent * extent; }
};

/// Calls visit(const MassItem&) for each beam element, then each shell element, then each tension-only member.
template <class Visit>
void for_each_mass(const Machine& machine, const Mesh& mesh, const ElementData& data, Visit visit) {
  const auto density = [&](int material) { return machine.materials.at(static_cast<std::size_t>(material)).density; };
  for (std::size_t i = 0; i < mesh.beams.size(); ++i) {
    const BeamElement& e = mesh.beams[i];
    const BeamData& d = data.beams[data.of_beam[i]];
    visit(MassItem{MassItem::Kind::beam, static_cast<int>(i), e.material, d.density * d.section.A, e.length});
  }
  for (std::size_t i = 0; i < mesh.shells.size(); ++i) {
    const ShellElement& e = mesh.shells[i];
    const Corners c = corners_of(mesh, e);
    visit(MassItem{MassItem::Kind::shell, static_cast<int>(i), e.material, density(e.material) * e.thickness,
                   (c[2] - c[0]).cross(c[3] - c[1]).norm() / 2});
  }
  for (std::size_t i = 0; i < mesh.joints.size(); ++i) {
    const Joint& j = mesh.joints[i];
    if (j.kind != JointKind::rod) continue;
    const Member& m = machine.members.at(static_cast<std::size_t>(j.index));
    const double length = (m.to - m.from).norm();
    const double area = j.stiffness[ux] * length / machine.materials.at(static_cast<std::size_t>(m.material)).E;
    visit(MassItem{MassItem::Kind::rod, static_cast<int>(i), m.material, density(m.material) * area, length});
  }
}

} // namespace bedbow
