/// \file
/// Why a machine can't be built, in words: the only place that turns its faults into sentences.
#pragma once

#include "io/units/output_units.h"
#include "mesh/check/buildable.h"

#include <string>
#include <vector>

namespace bedbow {

/// "its hole lies 15 mm from the edge of bed.top, at least 26.4 mm are needed (...); ...": of the part, without its
/// name.
std::string fault_text(const Fault& fault, const OutputUnits& units);

/// With the part in front, all in one line with "; " between; those that can't be made at all first. \param most how
/// many are told; of more their number follows.
std::string faults_line(const std::vector<Fault>& faults, const OutputUnits& units, std::size_t most = 3);

} // namespace bedbow
