/// \file
/// Linear solvers that are built in.
#pragma once

#include "mesh/piece/registry.h"
#include "solver/linear/factorization.h"

namespace bedbow {

/// Adds the built-in solvers. Throws std::invalid_argument where a name is taken.
void builtin_linear_solvers(Registry<LinearSolverEntry>& solvers);

} // namespace bedbow
