/// \file
/// Screws slip by an uncertain amount: what the machine does at both limits of it.
#pragma once

#include "solver/findings.h"
#include "solver/registries.h"
#include "solver/sheet_law.h"
#include "solver/steps.h"

namespace bedbow {

/// Solves all steps twice more: with the rows of screws welded, and with screws that carry no shear along x. See
/// mesh/screw_limits.h. \param mesh of the machine, as made by make_mesh. \param sheet its line loads.
Bracket bracket_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                   const std::optional<SheetLoads>& sheet);

} // namespace bedbow
