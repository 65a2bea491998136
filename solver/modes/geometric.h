/// \file
/// Geometric stiffness of a loaded step, part by part.
#pragma once

#include "solver/model/steps.h"
#include "solver/modes/free_map.h"

namespace bedbow {

/// Geometric stiffness by component of a free map: elements from their forces and membrane stress, and every force at
/// the end of a rigid arm (loads, joints, screws, elements joined off their nodes), since it moves with the arm.
std::vector<SymmetricMatrix> assemble_geometric(const Model& model, const DofMap& map, const StepSolution& step);

} // namespace bedbow
