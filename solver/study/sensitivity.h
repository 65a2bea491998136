/// \file
/// What matters: how bow and bend angle change with each size, place and stiffness, by central differences of two steps
/// whose disagreement is shown.
#pragma once

#include "solver/findings.h"

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// The quantities watched: bow of bed, clamp, apron [m], spread of the bend angle [rad]. NaN where there is none.
using Watched = std::array<double, 4>;

/// The watched quantities of one step.
Watched watched_of(const StepResult& step);

/// The machine's answer with one quantity moved by `offset` [SI]; nothing where that machine can't be made or solved.
using Moved = std::function<std::optional<Watched>(double offset)>;

/// Change of the watched quantities for a change of one quantity by `step`.
struct Sensitivity {
  std::string name;
  double step = 0;    ///< [SI]
  Watched change{};   ///< for `step`, from differences over half of it either way
  Watched error{};    ///< what differences over the whole step would change in that
  bool solved = true; ///< false: one of the neighbouring machines can't be made or solved
  /// Greatest change, each over the value that it changes: for sorting.
  double weight = 0;
};

/// \param base the unchanged machine's. \param step [SI] > 0 for which the change is told.
/// \param reach [SI] > 0 over which it is differenced (no more than `step` where that is much for the quantity).
Sensitivity sensitivity(const std::string& name, const Watched& base, double step, double reach, const Moved& moved);

/// Sorts by weight, greatest first; what could not be solved last.
void sort_by_weight(std::vector<Sensitivity>& list);

} // namespace bedbow
