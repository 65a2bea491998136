/// \file
/// Sensitivity of bow and bend angle to each size, place and stiffness, by differences over two steps whose
/// disagreement is reported.
#pragma once

#include "solver/findings/findings.h"

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

/// Results of the machine with one quantity varied by `offset` [SI]; nothing where that machine can't be made or
/// solved.
using Moved = std::function<std::optional<Watched>(double offset)>;

/// Change of the watched quantities for a change of one quantity by `step`.
struct Sensitivity {
  std::string name;
  double step = 0;      ///< [SI]
  Watched change{};     ///< for `step`, from differences over half of it
  Watched error{};      ///< change of that with differences over the whole step (one-sided: twice as far)
  bool solved = true;   ///< false: on neither side can the neighbouring machines be made and solved
  bool one_way = false; ///< one-sided, because the other side is not a valid machine
  /// Greatest relative change: for sorting.
  double weight = 0;
};

/// Central differences (f(h) - f(-h))/2h with h = reach/2 and reach; where one side can't be solved, one-sided ones of
/// the same order, (4 f(h) - f(2h) - 3 f(0))/2h. \param base the unchanged machine's. \param step [SI] > 0 for which
/// the change is reported. \param reach [SI] > 0 over which differences are taken (less than `step` where that is large
/// for the quantity).
Sensitivity sensitivity(const std::string& name, const Watched& base, double step, double reach, const Moved& moved);

/// Sorts by weight, greatest first; what could not be solved last.
void sort_by_weight(std::vector<Sensitivity>& list);

} // namespace bedbow
