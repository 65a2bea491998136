/// \file
/// A case in words and tables, as `bedbow check` prints it: what was understood, what is assumed, what is doubtful.
#pragma once

#include "io/case/case_reader.h"
#include "io/text/style.h"

#include <string>
#include <vector>

namespace bedbow {

/// Bodies and bars, sheet, joints, structure, loads, dials, what is asked, what is assumed, warnings. Lengths, forces
/// and stresses are in the units of [output]. \param found further lines about what is to be solved, from whoever made
/// the mesh and swung the apron.
std::string explain(const Case& c, const std::vector<std::string>& found, const Style& style);

/// The limits that are given, "bow 0.25 mm, utilisation 0.67"; empty where there are none.
std::string limit_words(const Limits& limits, const OutputUnits& units, bool of_steps_only = false);

} // namespace bedbow
