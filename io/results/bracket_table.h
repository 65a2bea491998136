/// \file
/// The printed bracket: what the bows would be if the screws let nothing slip, and if they carried no shear.
#pragma once

#include "io/text/style.h"
#include "io/text/table.h"
#include "io/units/output_units.h"
#include "solver/findings/findings.h"

#include <string>

namespace bedbow {

/// Its line above the table, and its rows for terminal and report alike; empty where the findings have no bracket.
std::string bracket_title(const Findings& findings, const OutputUnits& units);
TextTable bracket_rows(const Findings& findings, const OutputUnits& units);

/// Table of both limits by step (with a sheet: bows and angle spread; without: how far each dial moves). Empty where
/// the findings have no bracket.
std::string bracket_table(const Findings& findings, const OutputUnits& units, const Style& style);

} // namespace bedbow
