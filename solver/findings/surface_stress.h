/// \file
/// Stress of a surface of quads from its resultants: averaged at its points, and judged over patches.
#pragma once

#include "solver/element/shell4.h"
#include "solver/findings/results.h"

#include <array>
#include <vector>

namespace bedbow {

/// Fills in von Mises stress at the points of a surface and the stress that is judged or, where not requested,
/// principal stress. \param at_corners by quad, in axes that agree. \param s has its points, quads and thickness.
void fill_surface(std::vector<std::array<ShellResultants, 4>> at_corners, bool judged, ShellStress& s);

} // namespace bedbow
