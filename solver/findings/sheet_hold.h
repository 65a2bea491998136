/// \file
/// Whether friction holds the clamped sheet against the push of the apron. Theory: docs/theory/sheet.md.
#pragma once

#include "solver/findings/findings.h"
#include "solver/model/steps.h"

#include <string>
#include <vector>

namespace bedbow {

/// What the sheet's hold needs and has in a bend step. \param sheet its line loads.
void fill_hold(const Model& model, const StepSolution& step, const SheetLoads& sheet, StepResult& out);

/// What is assumed of friction at nose, bed and apron; empty without a sheet.
std::vector<std::string> friction_assumptions(const Machine& machine);

/// Warnings of steps whose friction did not settle.
std::vector<std::string> friction_warnings(const std::vector<StepResult>& steps);

} // namespace bedbow
