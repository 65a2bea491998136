/// \file
/// Unstructured grids read by VTK.
#pragma once

#include "io/vtk/mesh_grid.h"

#include <string>

namespace bedbow {

/// A grid from a file's bytes. \param legacy the older format, else XML. Throws std::runtime_error with a readable
/// message.
MeshGrid read_grid(const std::string& bytes, bool legacy);

} // namespace bedbow
