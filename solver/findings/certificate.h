/// \file
/// Whether a solution is accurate: bounds of StepChecks. Theory: docs/theory/validity.md.
#pragma once

#include "solver/findings/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// Bound of each ratio in docs/results.md; beyond it a warning.
inline constexpr double certified = 1e-9;
/// Beyond this the result is rejected. Rounding stays some orders of magnitude below it, errors of a solver do not.
inline constexpr double believed = 1e-6;
/// Loads and forces below this are treated as zero, since their ratios are noise [N].
inline constexpr double least_force = 1e-3;

/// Evaluates the checks of all steps. \return violated checks, in words, worst first; empty where all are within
/// `bound`.
std::string missed_by(const std::vector<StepResult>& steps, double bound);

/// Status::inaccurate with `trouble` beyond `believed`, a warning beyond `certified`.
void certify(Findings& findings);

} // namespace bedbow
