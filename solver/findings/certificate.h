/// \file
/// Whether a solution may be believed: bounds of StepChecks. Theory: docs/theory/validity.md.
#pragma once

#include "solver/findings/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// What docs/results.md promises of each ratio; beyond it a warning.
inline constexpr double certified = 1e-9;
/// Beyond this the answer is not handed out. Rounding stays some orders below it, errors of a solver do not.
inline constexpr double believed = 1e-6;
/// Loads and forces under this are none, and their ratios noise [N].
inline constexpr double least_force = 1e-3;

/// Judges the checks of all steps. \return what is missed, in words, worst first; empty where all are within `bound`.
std::string missed_by(const std::vector<StepResult>& steps, double bound);

/// Status::inaccurate with `trouble` beyond `believed`, a warning beyond `certified`.
void certify(Findings& findings);

} // namespace bedbow
