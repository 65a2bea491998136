/// \file
/// Depth of the sections that welded bars make together: over it their section forces are averaged
/// (docs/theory/validity.md).
#pragma once

#include "mesh/build/mesh.h"

#include <span>

namespace bedbow {

/// Sets BarLayout::welded_depth of all beam bars. \param welds all that the mesh has between bars.
void measure_welded_sections(const Machine& machine, std::span<const Weld> welds, Mesh& mesh);

} // namespace bedbow
