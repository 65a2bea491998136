/// \file
/// Interface to the module that contains VTK. The program is not linked to VTK, whose libraries take longer to load
/// than most machines to solve; they are loaded with the module when the first VTK file is written or read. Program and
/// module are from the same build, so plain C++ types may be passed.
#pragma once

#include "io/vtk/mesh_grid.h"
#include "io/vtk/vtk_grid.h"

#include <string>

namespace bedbow {

/// What the module's one exported function `bedbow_vtk_module` returns.
struct VtkModule {
  const char* version; ///< of the build: must match the program's
  /// A .vtu file (VTK XML unstructured grid, raw appended binary) of a grid, as its bytes. Throws std::runtime_error.
  std::string (*vtu)(const VtkGrid& grid);
  /// A grid from a file's bytes. \param legacy the older format, else XML. Throws std::runtime_error.
  MeshGrid (*read)(const std::string& bytes, bool legacy);
};

/// The module, loaded on the first call and kept. Throws FileError (see io/files/module.h).
const VtkModule& vtk_module();

} // namespace bedbow
