/// \file
/// Frequencies and load factors as printed tables.
#pragma once

#include "io/text/style.h"
#include "io/text/table.h"
#include "solver/findings/findings.h"

#include <string>
#include <vector>

namespace bedbow {

/// One line per mode: frequency, what moves, which bodies are strained most. Empty where neither was requested.
std::string modes_table(const ModesResult& modes, const Style& style);

/// The same for one kind of shape, complete. \param head unit of `frequency`: "Hz" or "times load".
TextTable shape_table(const std::vector<ModeShape>& shapes, const std::string& head);

/// "clamp 71 %, joints 26 %": where the strain energy is, the greatest shares first; "-" where nothing is strained.
/// \param most how many are named; shares under a twentieth are not.
std::string strained_most(const ModeShape& shape, std::size_t most);

} // namespace bedbow
