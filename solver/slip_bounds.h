/// \file
/// Slip bounds: the slip of screws is uncertain, and so is that of the sheet, so the machine is also solved at their
/// limits.
#pragma once

#include "solver/findings/findings.h"
#include "solver/model/steps.h"
#include "solver/registry/registries.h"
#include "solver/sheet/sheet_law.h"

namespace bedbow {

/// Solves all steps three times more: with the rows of screws welded, with screws that do not slip but let the bars
/// roll, and with screws that carry no shear along x. See mesh/check/screw_limits.h. \param mesh of the machine, as
/// made by make_mesh. \param sheet its line loads.
SlipBounds slip_bounds_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                          const std::optional<SheetLoads>& sheet);

/// Solves all steps twice more: with a sheet that slides on nose and bed without friction, and with one that sticks to
/// both while it is bent.
FrictionBounds friction_bounds_of(const Model& model, const std::optional<SheetLoads>& sheet);

} // namespace bedbow
