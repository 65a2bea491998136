/// \file
/// Mass of the machine, part by part.
#pragma once

#include "solver/assembly/assembly.h"

namespace bedbow {

/// Mass matrices by component, with the pattern of the stiffness: consistent with rotary inertia, or lumped.
/// Tension-only members have half of their mass at each end.
std::vector<SymmetricMatrix> assemble_mass(const Machine& machine, const Mesh& mesh, const DofMap& map,
                                           const ElementData& data, bool lumped);

/// Mass of one beam element in global axes, releases condensed with the stiffness.
Matrix12d beam_mass_of(const Mesh& mesh, const ElementData& data, int element, bool lumped);

} // namespace bedbow
