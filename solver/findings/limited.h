/// \file
/// The values of a step that [limits] bounds, one entry each: the verdict, reports and studies loop over them.
#pragma once

#include "solver/findings/findings.h"
#include "solver/findings/part_peaks.h"

#include <functional>
#include <limits>
#include <string>
#include <vector>

namespace bedbow {

/// A step's value; NaN where it has no meaning or is not judged in that step.
struct StepValue {
  double value = std::numeric_limits<double>::quiet_NaN(); ///< SI
  double x = std::numeric_limits<double>::quiet_NaN(); ///< where along the bend line [m]; NaN where that says nothing
};

struct Limited {
  std::optional<double> Limits::*limit;
  Quantity of;
  std::string name; ///< "clamp bow"
  Failure failure;
  std::string part, check; ///< as Reason has them
  std::function<StepValue(const StepResult&)> in_step;
};

/// All of them, in the order in which reports show them.
const std::vector<Limited>& limited_values();

/// The greatest value of all steps; of no step where none has one.
Peak greatest(const Limited& limited, const std::vector<StepResult>& steps);

} // namespace bedbow
