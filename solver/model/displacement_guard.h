/// \file
/// Bounds of small displacements. Everything is solved about the machine as drawn; where parts tip or bend so far that
/// their new place would change the forces, the answer is no answer. Theory: docs/theory/validity.md.
#pragma once

#include "mesh/piece/si.h"
#include "solver/model/steps.h"
#include "solver/strength/reason.h"

#include <numbers>
#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// Displacement beyond this part of the length, or rotation beyond the angle, is out of range. At 10 deg the sine is
/// 0.5 % from the angle, but the cosine 1.5 % from 1, and so are levers. Common practice, no source.
inline constexpr double most_displaced = 1.0 / 30, most_turned = 10 * si::degree; ///< [1], [rad]
/// Beyond these an answer is only rough: rotation [rad], and displacement in thicknesses of the sheet.
inline constexpr double roughly_turned = 2 * si::degree, rough_thicknesses = 5;

/// Whether a bar, member, panel or own part is displaced, beyond its component's travel, by more than most_displaced
/// of its length (of its body for bars; where it hangs on a larger part, of that) or rotated by more than most_turned,
/// or not by a number at all. \return what moves, and what would have to stop it; nothing where all are in range.
std::optional<std::string> beyond_small_displacements(const Model& model, const StepSolution& step);

/// Parts beyond the rough bounds, one reason each at most: Failure::moves.
std::vector<Reason> roughly_displaced(const Model& model, const StepSolution& step);

} // namespace bedbow
