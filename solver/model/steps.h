/// \file
/// Clamp first, then bend from that state at each apron angle: one small system per step.
#pragma once

#include "solver/model/model.h"
#include "solver/model/status.h"

namespace bedbow {

struct StepsOutcome {
  Status status = Status::ok;
  std::string trouble; ///< description of the mechanism, of what did not converge, or of what is displaced too far
  std::vector<std::string> history;
  std::vector<StepSolution> steps;
};

/// Angles of the bend steps: those of the case, or 0, half the wanted angle and the wanted angle.
std::vector<double> bend_angles(const Machine& machine);

/// Solves all steps; mechanism where the model has one or a step allows one, out_of_range where displacement_guard.h
/// finds one too far. \param sheet line loads of the bent sheet, where there is one. \param friction of the sheet while
/// it is bent; while it is being clamped it slides.
StepsOutcome solve_steps(const Model& model, const std::optional<SheetLoads>& sheet,
                         SheetFriction friction = SheetFriction::by_coefficient);

} // namespace bedbow
