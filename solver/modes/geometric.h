/// \file
/// What the stress of a loaded step adds to or takes from the stiffness, part by part.
#pragma once

#include "solver/model/steps.h"
#include "solver/modes/free_map.h"

namespace bedbow {

/// Geometric stiffness by component of a free map: elements from their forces and membrane stress, and every force that
/// attacks on a rigid arm (loads, joints, screws, elements joined off their nodes), since the arm carries it along.
std::vector<SymmetricMatrix> assemble_geometric(const Model& model, const DofMap& map, const StepSolution& step);

} // namespace bedbow
