/// \file
/// A case in words and tables, as `bedbow check` prints it: the case as read, assumptions, warnings.
#pragma once

#include "io/case/case_reader.h"
#include "io/text/style.h"

#include <string>
#include <vector>

namespace bedbow {

/// Bodies and bars, sheet, joints, structure, loads, dials, settings, assumptions, warnings. Lengths, forces and
/// stresses are in the units of [output]. \param found further lines about the analysis, from the mesher and the check
/// of the swing.
std::string explain(const Case& c, const std::vector<std::string>& found, const Style& style);

} // namespace bedbow
