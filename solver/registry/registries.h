/// \file
/// All registries, filled by one explicit function and passed along.
#pragma once

#include "mesh/piece/registry.h"
#include "mesh/piece/shapes.h"
#include "solver/element/element_entry.h"
#include "solver/linear/factorization.h"
#include "solver/sheet/sheet_law.h"

namespace bedbow {

struct Registries {
  Registry<ShapeEntry> shapes{"section shape"};
  Registry<MomentLawEntry> moment_laws{"moment law"};
  Registry<LinearSolverEntry> linear_solvers{"linear solver"};
  Registry<ElementEntry> elements{"element"};
};

/// Registries with all built-in entries.
Registries builtin_registries();

} // namespace bedbow
