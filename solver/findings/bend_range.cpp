#include "solver/findings/bend_range.h"

#include "solver/model/displacement_guard.h"
#include "solver/strength/comparison.h"

#include <cmath>

namespace bedbow {

std::optional<Reason> far_from_the_bend(const std::vector<StepResult>& steps) {
  Reason worst{Failure::moves, "bend angle", "deviation", most_turned, most_turned, Quantity::angle};
  bool found = false;
  for (const StepResult& s : steps) {
    if (!judges_bend(s)) continue;
    const std::vector<double>& deviation = s.bend_line.angle_deviation;
    for (std::size_t i = 0; i < deviation.size(); ++i) {
      if (!clearly_greater(std::abs(deviation[i]), worst.value)) continue;
      found = true;
      worst.value = std::abs(deviation[i]);
      worst.step = s.name;
      worst.x = s.bend_line.x[i];
    }
  }
  return found ? std::optional(worst) : std::nullopt;
}

} // namespace bedbow
