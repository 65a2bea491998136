#include "io/vtk/vtk_module.h"

#include "io/files/module.h"

namespace bedbow {

const VtkModule& vtk_module() {
  static const auto& module = *static_cast<const VtkModule*>(
      load_module({"libbedbow_vtk.so", "bedbow_vtk_module", "writes and reads VTK files",
                   "the VTK libraries"})); // a failed load throws, and the next call tries again
  return module;
}

} // namespace bedbow
