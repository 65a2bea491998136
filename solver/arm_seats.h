/// \file
/// Joints on rigid arms have no answer without the size of their seats: where the case does not give it, the machine is
/// also solved with small ones. See docs/theory/joints.md.
#pragma once

#include "mesh/build/mesh.h"
#include "solver/findings/findings.h"
#include "solver/registry/registries.h"
#include "solver/sheet/sheet_law.h"

#include <optional>

namespace bedbow {

/// Solves all steps once more with seats of `small_seat` for the joints on arms whose seats the case omits.
/// \param mesh of the machine. \param steps its results. \param sheet its line loads.
/// \return nothing where there are no such joints.
std::optional<ArmSeats> arm_seats_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                                     const std::vector<StepResult>& steps, const std::optional<SheetLoads>& sheet);

/// Adds a warning for each joint whose force a small seat changes by more than a tenth.
void warn_of_seats(const ArmSeats& seats, std::vector<std::string>& warnings);

} // namespace bedbow
