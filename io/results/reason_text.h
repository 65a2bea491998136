/// \file
/// Why a machine does not pass, in words: the only place that turns the reasons of a verdict into sentences.
#pragma once

#include "io/units/output_units.h"
#include "solver/strength/reason.h"

#include <string>
#include <vector>

namespace bedbow {

/// "clamp bows 0.31 mm in step bend 0 deg, limit 0.25 mm".
std::string reason_text(const Reason& reason, const OutputUnits& units);

/// One sentence each, in the order given.
std::vector<std::string> reason_text(const std::vector<Reason>& reasons, const OutputUnits& units);

/// All in one line, with "; " between.
std::string reasons_line(const std::vector<Reason>& reasons, const OutputUnits& units);

} // namespace bedbow
