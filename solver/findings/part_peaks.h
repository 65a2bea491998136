/// \file
/// Greatest load and highest utilisation of each part over the steps; the step with the greatest force need not be the
/// one with the highest utilisation.
#pragma once

#include "solver/findings/findings.h"

#include <array>
#include <string>
#include <vector>

namespace bedbow {

/// A list of joints of a step, with the name of its kind.
struct JointList {
  const char* kind;
  std::vector<JointResult> StepResult::*list;
  bool checked; ///< against allowable values
};
/// In the order in which results are shown.
inline constexpr std::array joint_lists{
    JointList{"post", &StepResult::posts, true},        JointList{"cam", &StepResult::cams, true},
    JointList{"hinge", &StepResult::hinges, true},      JointList{"screws", &StepResult::screws, true},
    JointList{"support", &StepResult::supports, false}, JointList{"tie", &StepResult::ties, false},
    JointList{"handle", &StepResult::handles, false}};

/// The greatest value over the steps, and where. Of steps that are equal up to rounding the first.
struct Peak {
  double value = 0;
  std::string step; ///< empty: no value yet
  double x = 0;     ///< [m]; members: along the member
  /// Takes a value that is clearly greater. \return whether it did.
  bool look(double other, const std::string& step_name, double at);
};

struct PartPeaks {
  std::string kind; ///< "bar", or that of JointList
  std::string name;
  Peak load;   ///< bars: von Mises stress [Pa]; joints: JointResult::value [N]; handles: moment [N m]
  Peak across; ///< hinges: force across the pin, with which pin and hole are checked [N]
  Peak use;    ///< highest utilisation; 0 where nothing is known
  Check check; ///< the one that governs there; without a name where none is known
  /// "post left end", "bar clamp.plate".
  [[nodiscard]] std::string label() const;
};

/// Peaks of each bar, member and panel, then of the joints by kind, each in the order of its first step.
std::vector<PartPeaks> part_peaks(const std::vector<StepResult>& steps);

/// "post left end" of kind "post" and name "left end"; a name that already states its kind is unchanged.
std::string with_kind(const std::string& kind, const std::string& name);

} // namespace bedbow
