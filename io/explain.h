/// \file
/// A case in words and tables, as `bedbow check` prints it: what was understood, what is assumed, what is doubtful.
#pragma once

#include "io/case_reader.h"
#include "io/style.h"

#include <string>

namespace bedbow {

/// Bodies and bars, sheet, joints, structure, loads, dials, what is asked, what is assumed, warnings. Lengths, forces
/// and stresses are in the units of [output]. \param mesh_size one line about the mesh, from whoever made it; empty:
/// nothing is said.
std::string explain(const Case& c, const std::string& mesh_size, const Style& style);

} // namespace bedbow
