/// \file
/// Element formulations that bars, members and panels name instead of the built-in ones: whose elements they are, and
/// their matrices. What a formulation does not bring stays the built-in element's.
#pragma once

#include "mesh/mesh.h"
#include "mesh/registry.h"
#include "solver/element/element_entry.h"
#include "solver/element/shell4.h"

#include <vector>

namespace bedbow {

/// Which formulation each element of a mesh has.
struct OwnElements {
  std::vector<ElementEntry> entries;  ///< those in use
  std::vector<int> of_beam, of_shell; ///< by element: index into `entries`, -1: built in. Empty: nobody names one
  [[nodiscard]] const ElementEntry* beam(std::size_t element) const { return find(of_beam, element); }
  [[nodiscard]] const ElementEntry* shell(std::size_t element) const { return find(of_shell, element); }

private:
  [[nodiscard]] const ElementEntry* find(const std::vector<int>& of, std::size_t element) const {
    if (of.empty() || of[element] < 0) return nullptr;
    return &entries[static_cast<std::size_t>(of[element])];
  }
};

/// Throws std::invalid_argument for a name that is not registered, or a formulation of the wrong dimension.
OwnElements own_elements(const Machine& machine, const Mesh& mesh, const Registry<ElementEntry>& elements);

/// Stiffness in the beam's own axes. \param from, to places of its nodes [m]. \param axes rows: its axes; all in global
/// axes.
Matrix12d own_beam_stiffness(const ElementEntry& own, const BeamData& data, double nu, const Eigen::Vector3d& from,
                             const Eigen::Vector3d& to, const Eigen::Matrix3d& axes);

/// Stiffness in global axes.
Matrix24d own_shell_stiffness(const ElementEntry& own, const Corners& corners, const ShellData& data);

/// Section forces at s = position / length in [0, 1], on the +x face of the cut, from the forces at the first end by
/// equilibrium with the line load. \param end (force, moment) that the first node exerts on the element, local axes.
SectionForces forces_by_equilibrium(const Vector6d& end, const BeamLineLoad& load, const BeamData& data, double length,
                                    double s);

} // namespace bedbow
