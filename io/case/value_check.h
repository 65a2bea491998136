/// \file
/// Checks one value against the description of its key.
#pragma once

#include "io/case/case_values.h"

namespace bedbow {

/// Reads a value of any kind but a table. Reports what is wrong under `path`; then `good` is false.
CaseValue check_value(const CaseNode& node, const KeySpec& spec, const std::string& path, ProblemList& problems);

} // namespace bedbow
