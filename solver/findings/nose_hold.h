/// \file
/// Clamping of the sheet along the bend line: total nose force, clamping reserve and nose opening.
/// Theory: docs/theory/bow.md.
#pragma once

#include "solver/findings/findings.h"
#include "solver/model/steps.h"

#include <string>
#include <vector>

namespace bedbow {

/// Default of [limits] nose_opening as a fraction of the sheet's thickness: common practice, no source.
inline constexpr double usual_nose_opening = 0.05;

/// Opening beyond which the nose is considered off the sheet [m]. \param thickness of the sheet [m].
double nose_opening_limit(const Limits& limits, double thickness);
/// The same for the machine's own sheet. \param machine with a sheet.
double nose_opening_limit(const Machine& machine);

/// Total force, reserve, opening and `lifted` at the bend line's stations, from the step's pads and the sheet's own
/// lever. \param line its `x` filled.
void fill_nose(const Model& model, const StepSolution& step, BendLine& line);

/// Summary of the nose in one step, over the stations under it.
struct NoseHold {
  std::size_t held = 0;            ///< stations under the nose
  std::size_t without_reserve = 0; ///< of them those whose pads carry no force
  std::size_t lifted = 0;          ///< of them those where the nose opens beyond the limit
  double opening = 0;              ///< greatest [m]
  double opening_x = 0;            ///< where [m]
  double least = 0, greatest = 0;  ///< total force per length at the stations without reserve [N/m]
};
NoseHold nose_hold(const BendLine& line);

/// The default limit of the opening and its source, for the assumptions; empty where the case gives the limit, or
/// where no nose clamps a sheet.
std::string nose_opening_assumption(const Machine& machine);

/// The caution that somewhere the nose is off the sheet, or that the sheet is held by its own lever alone, in the worst
/// of the bend steps; empty where every station keeps a reserve, or where the nose opens beyond a limit that the case
/// gives (the verdict then says more). \param steps the clamp step, then the bend steps.
std::string hold_warning(const Machine& machine, const std::vector<StepResult>& steps);

} // namespace bedbow
