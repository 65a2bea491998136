/// \file
/// The printed result: bow of each body, variation of the bend angle, and whether anything is overloaded.
#pragma once

#include "io/text/style.h"
#include "io/units/output_units.h"
#include "solver/findings/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// Tables and verdict of solved findings as text for a terminal of 100 columns.
/// \param assumptions in addition to the solver's (defaults of the case).
std::string summary(const Findings& findings, const OutputUnits& units, const Style& style,
                    const std::vector<std::string>& assumptions);

/// The cautions that go with every result, a line each.
std::vector<std::string> cautions();

} // namespace bedbow
