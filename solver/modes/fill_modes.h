/// \file
/// Modes and buckling of an analysed machine as findings.
#pragma once

#include "solver/findings/findings.h"
#include "solver/modes/modes.h"
#include "solver/registry/registries.h"

#include <memory>

namespace bedbow {

/// Default of [limits] buckling, the least load factor that passes: a common margin for effects that linear buckling
/// neglects (common practice, no source).
constexpr double usual_buckling_limit = 3;

/// Computes [solve] modes and buckling. \param steps the solved ones; empty where the clamp step is a mechanism: then
/// the joints count as closed, and there is no buckling. \param sections as for fill_fields;
/// empty: no fields. Fills Findings::modes and Findings::warnings.
/// Throws std::invalid_argument when [solve] buckling_step names no step.
void fill_modes(const Model& model, const Registries& registries, const std::vector<StepSolution>& steps,
                const std::vector<std::shared_ptr<const Section>>& sections, Findings& out);

/// Adds to the verdict: a load factor below [limits] buckling, by default 3.
void judge_buckling(const Machine& machine, const ModesResult& modes, Verdict& verdict);

} // namespace bedbow
