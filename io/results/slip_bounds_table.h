/// \file
/// The printed slip bounds: the bows without slip at the screws, and without shear in them.
#pragma once

#include "io/text/style.h"
#include "io/text/table.h"
#include "io/units/output_units.h"
#include "solver/findings/findings.h"

#include <string>

namespace bedbow {

/// Title and rows of the table, for terminal and report alike; empty where the findings have no bracket.
std::string slip_bounds_title(const Findings& findings, const OutputUnits& units);
TextTable slip_bounds_rows(const Findings& findings, const OutputUnits& units);

/// Table of both limits by step (with a sheet: bows and angle spread; without: the displacement of each dial). Empty
/// where the findings have no bracket.
std::string slip_bounds_table(const Findings& findings, const OutputUnits& units, const Style& style);

} // namespace bedbow
