/// \file
/// Whether the bend is still the one that was solved for. Theory: docs/theory/validity.md.
#pragma once

#include "solver/findings/findings.h"

#include <optional>
#include <vector>

namespace bedbow {

/// The greatest deviation of the bend angle along the sheet where it exceeds `most_turned`: a deviation is a
/// displacement over the flange, which is an angle only while it is small, and the sheet's loads belong to the angle
/// without it. \return Failure::moves, with step and place; nothing where all are in range. Steps without a bend do not
/// count.
std::optional<Reason> far_from_the_bend(const std::vector<StepResult>& steps);

} // namespace bedbow
