/// \file
/// Frequencies and load factors as printed tables.
#pragma once

#include "io/style.h"
#include "solver/findings.h"

#include <string>

namespace bedbow {

/// One line per mode: frequency, what moves, which bodies are strained most. Empty where neither was asked for.
std::string modes_table(const ModesResult& modes, const Style& style);

} // namespace bedbow
