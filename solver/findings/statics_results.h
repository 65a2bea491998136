/// \file
/// Data with which the equilibrium of results can be checked: parts, what each joint joins, loads of each part, and
/// contact forces of bodies and bars.
#pragma once

#include "solver/findings/findings.h"
#include "solver/model/steps.h"

namespace bedbow {

/// The parts of a model, in the order of its components.
std::vector<PartResult> parts_of(const Model& model);

/// The parts that a joint joins, by name and index, and its points of application at an angle of the apron.
void fill_joined(const Model& model, const Joint& joint, double angle, JointResult& out);

/// Loads of a step by source and part, each computed again from the case, not from joint forces.
/// \param sheet its line loads, where there is one.
void fill_loads(const Model& model, const StepSolution& step, const std::optional<SheetLoads>& sheet, StepResult& out);

/// Pads of the nose, and contact springs between bars.
void fill_contacts(const Model& model, const StepSolution& step, StepResult& out);

} // namespace bedbow
