/// \file
/// What results must say so that anyone can add up their forces: which parts there are, what each joint joins, what
/// loads each part, and where bodies and bars press on each other.
#pragma once

#include "solver/findings/findings.h"
#include "solver/model/steps.h"

namespace bedbow {

/// The parts of a model, in the order of its components.
std::vector<PartResult> parts_of(const Model& model);

/// What a joint joins, by name and by part, and where either of them feels it at an angle of the apron.
void fill_joined(const Model& model, const Joint& joint, double angle, JointResult& out);

/// Loads of a step by source and part, each built anew from what the case asks, not from what the joints carry.
/// \param sheet its line loads, where there is one.
void fill_loads(const Model& model, const StepSolution& step, const std::optional<SheetLoads>& sheet, StepResult& out);

/// Pads of the nose, and springs between bars that only lie on each other.
void fill_contacts(const Model& model, const StepSolution& step, StepResult& out);

} // namespace bedbow
