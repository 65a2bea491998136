/// \file
/// Frequencies and load factors as printed tables.
#pragma once

#include "io/style.h"
#include "io/table.h"
#include "solver/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// One line per mode: frequency, what moves, which bodies are strained most. Empty where neither was asked for.
std::string modes_table(const ModesResult& modes, const Style& style);

/// The same of one kind of shape, uncut. \param head what `frequency` holds: "Hz" or "times load".
TextTable shape_table(const std::vector<ModeShape>& shapes, const std::string& head);

} // namespace bedbow
