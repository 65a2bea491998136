/// \file
/// The printed result: how much each body bows, how much the bend angle varies, whether anything gives.
#pragma once

#include "io/text/style.h"
#include "io/units/output_units.h"
#include "solver/findings/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// Tables and verdict of solved findings as text for a terminal of 100 columns.
/// \param assumptions further ones than the solver's (what the case left out).
std::string summary(const Findings& findings, const OutputUnits& units, const Style& style,
                    const std::vector<std::string>& assumptions);

/// The cautions that go with every result.
std::string cautions();

} // namespace bedbow
