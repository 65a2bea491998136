/// \file
/// The few numbers by which machines are compared: worst values over all steps.
#pragma once

#include "solver/findings/findings.h"

#include <array>
#include <string>
#include <vector>

namespace bedbow {

/// SummaryMetrics results of solved findings. NaN where a quantity has no meaning (a body that is absent, no bend).
struct SummaryMetrics {
  std::array<double, 3> bow{};             ///< by BodyKind, greatest over the steps [m]; apron: over the bend steps
  std::array<double, 3> straightness{};    ///< likewise [m]
  double angle_mean = 0, angle_spread = 0; ///< of the bend step with the greatest spread [rad]
  double utilisation = 0;                  ///< greatest of bars, posts, cams, hinges and screws over the steps
  std::string utilisation_at;              ///< part that reaches it: "clamp.spine"
  double post_force = 0;                   ///< greatest tension of a post over the steps [N]
  double buckling = 0;                     ///< least load factor; NaN unless requested
  double mass = 0;                         ///< [kg]
  bool pass = false;
  std::vector<Reason> reasons; ///< why it does not pass, gravest first
};

/// \param findings solved (Status::ok).
SummaryMetrics headline(const Findings& findings);

} // namespace bedbow
