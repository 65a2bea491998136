/// \file
/// Greatest load and highest utilisation of each part over the steps; the step with the greatest force need not be the
/// one with the highest utilisation.
#pragma once

#include "solver/findings/findings.h"

#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// The greatest value over the steps, and where. Of steps that are equal up to rounding the first.
struct Peak {
  double value = 0;
  std::string step; ///< empty: no value yet
  double x = 0;     ///< [m]; members: along the member
  /// Takes a value that is clearly greater. \return whether it did.
  bool look(double other, const std::string& step_name, double at);
};

struct PartPeaks {
  std::optional<JointKind> kind; ///< none: a bar, member or panel
  std::string name;
  Peak load;   ///< bars: von Mises stress [Pa]; joints: JointResult::value [N], or a moment [N m] by their kind
  Peak local;  ///< bars: local von Mises stress, which is not judged [Pa]
  Peak across; ///< hinges: force across the pin, with which pin and hole are checked [N]
  Peak thrust; ///< hinges: force along the pin, which nothing is checked with [N]
  Peak use;    ///< highest utilisation; 0 where nothing is known
  Check check; ///< the one that governs there; without a name where none is known
  /// "post left end", "bar clamp.plate".
  [[nodiscard]] std::string label() const;
};

/// Peaks of each bar, member and panel, then of the joints by kind, each in the order of its first step.
std::vector<PartPeaks> part_peaks(const std::vector<StepResult>& steps);

/// Highest utilisation of any bar or joint in a step; 0 where none is known.
double highest_use(const StepResult& step);

} // namespace bedbow
