/// \file
/// Bounds of small displacements. Everything is solved for the geometry as drawn; where parts tip or bend so far that
/// their new position would change the forces, the results are invalid. Theory: docs/theory/validity.md.
#pragma once

#include "mesh/piece/si.h"
#include "solver/model/steps.h"
#include "solver/strength/reason.h"

#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// Displacement beyond this fraction of the length, or rotation beyond the angle, is out of range. At 10 deg the sine
/// differs from the angle by 0.5 %, but the cosine, and so lever arms, from 1 by 1.5 %. Common practice, no source.
inline constexpr double most_displaced = 1.0 / 30, most_turned = 10 * si::degree; ///< [1], [rad]
/// Beyond these a result is only approximate: rotation [rad], and displacement in thicknesses of the sheet.
inline constexpr double roughly_turned = 2 * si::degree, rough_thicknesses = 5;

/// Whether a bar, member, panel or part of the user's mesh is displaced, beyond its component's travel, by more than
/// most_displaced of its length (of its body for bars; of the larger part that it belongs to) or rotated by more than
/// most_turned, or by NaN. \return description of the part and its joints; nothing where all are in range.
std::optional<std::string> beyond_small_displacements(const Model& model, const StepSolution& step);

/// Parts beyond the bounds for approximate results, at most one reason each: Failure::moves.
std::vector<Reason> roughly_displaced(const Model& model, const StepSolution& step);

} // namespace bedbow
