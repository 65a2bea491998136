/// \file
/// Tables of the sheet's friction: whether it holds the sheet, and the bounds with and without.
#pragma once

#include "io/text/style.h"
#include "io/text/table.h"
#include "io/units/output_units.h"
#include "solver/findings/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// What the sheet's hold needs and has, one sentence a bend step.
std::vector<std::string> sheet_hold_words(const Findings& findings, const OutputUnits& units);
std::string sheet_hold_title(const Findings& findings);

/// Bow, mean and spread of the bend angle, and highest utilisation by step: sliding, as solved, sticking. Empty where
/// there are no bounds.
TextTable friction_rows(const Findings& findings, const OutputUnits& units);
std::string friction_title(const OutputUnits& units);

/// The sides that could not be solved, and why.
std::vector<std::string> friction_troubles(const Findings& findings);

} // namespace bedbow
