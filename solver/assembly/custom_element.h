/// \file
/// Element formulations that bars, members and panels name instead of the built-in ones, by element.
/// Their matrices: solver/assembly/mesh_elements.h.
#pragma once

#include "mesh/build/mesh.h"
#include "mesh/piece/registry.h"
#include "solver/element/element_entry.h"
#include "solver/element/shell4.h"

#include <vector>

namespace bedbow {

/// Which formulation each element of a mesh has.
struct CustomElements {
  std::vector<ElementEntry> entries;  ///< those in use
  std::vector<int> of_beam, of_shell; ///< by element: index into `entries`, -1: built in. Empty: none is named
  [[nodiscard]] const ElementEntry* beam(std::size_t element) const { return find(of_beam, element); }
  [[nodiscard]] const ElementEntry* shell(std::size_t element) const { return find(of_shell, element); }

private:
  [[nodiscard]] const ElementEntry* find(const std::vector<int>& of, std::size_t element) const {
    if (of.empty() || of[element] < 0) return nullptr;
    return &entries[static_cast<std::size_t>(of[element])];
  }
};

/// Throws std::invalid_argument for a name that is not registered, or a formulation of the wrong dimension.
CustomElements custom_elements(const Machine& machine, const Mesh& mesh, const Registry<ElementEntry>& elements);

/// Section forces at s = position / length in [0, 1], on the +x face of the cut, from the forces at the first end by
/// equilibrium with the line load. \param end (force, moment) that the first node exerts on the element, local axes.
SectionForces forces_by_equilibrium(const Vector6d& end, const BeamLineLoad& load, const BeamData& data, double length,
                                    double s);

} // namespace bedbow
