/// \file
/// How the nose holds the sheet along the bend line: its force in all, the reserve of clamping, and its opening.
/// Theory: docs/theory/bow.md.
#pragma once

#include "solver/findings/findings.h"
#include "solver/model/steps.h"

#include <string>
#include <vector>

namespace bedbow {

/// Opening of the nose over the sheet from which on it counts as off the sheet [m]. \param machine with a sheet.
double nose_opening_limit(const Machine& machine);

/// Force in all, reserve, opening and `lifted` at the bend line's stations, from the step's pads and the sheet's own
/// lever. \param line its `x` filled.
void fill_nose(const Model& model, const StepSolution& step, BendLine& line);

/// What one step's bend line says of the nose, over the stations that stand under it.
struct NoseHold {
  std::size_t held = 0;            ///< stations under the nose
  std::size_t without_reserve = 0; ///< of them those whose pads carry nothing
  std::size_t lifted = 0;          ///< of them those where the nose opens beyond the limit
  double opening = 0;              ///< greatest [m]
  double opening_x = 0;            ///< where [m]
  double least = 0, greatest = 0;  ///< force in all per length at the stations without reserve [N/m]
};
NoseHold nose_hold(const BendLine& line);

/// What a machine's limit on the opening is and where it comes from, for the assumptions; empty where the case gives
/// it, or where no nose holds a sheet.
std::string nose_opening_assumption(const Machine& machine);

/// The caution that somewhere the nose is off the sheet, or that the sheet is held by its own lever alone, in the worst
/// of the bend steps; empty where every station keeps a reserve, or where the nose opens beyond a limit that the case
/// gives (the verdict then says more). \param steps the clamp step, then the bend steps.
std::string hold_warning(const Machine& machine, const std::vector<StepResult>& steps);

} // namespace bedbow
