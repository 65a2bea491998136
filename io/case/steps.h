/// \file
/// Values from one to another in equal steps, as a case file would write them.
#pragma once

#include "io/case/case_node.h"

#include <string>
#include <vector>

namespace bedbow {

/// `steps` >= 2 values from `from` to `to`, both included, in the unit of `from`: quantities "60 mm" to "8 cm", or bare
/// numbers. Twelve digits are kept, so that the values read as one would write them.
/// Throws std::invalid_argument where the two are not of the same kind.
std::vector<CaseNode> values_between(const CaseNode& from, const CaseNode& to, int steps);

} // namespace bedbow
