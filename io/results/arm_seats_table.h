/// \file
/// Joints on rigid arms, with the seats assumed and with small ones, for terminal and report alike.
#pragma once

#include "io/text/table.h"
#include "io/units/output_units.h"
#include "solver/findings/findings.h"

#include <string>

namespace bedbow {

std::string arm_seats_title(const OutputUnits& units);

/// A row per joint; empty where the findings have none.
TextTable arm_seats_rows(const Findings& findings, const OutputUnits& units);

} // namespace bedbow
