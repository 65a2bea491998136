/// \file
/// Modules that are loaded only when needed, so that the program starts without their libraries. Program and modules
/// are from the same build, so plain C++ types may be passed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace bedbow {

struct ModuleName {
  std::string file;  ///< "libbedbow_vtk.so"
  std::string entry; ///< its one exported function, which returns the module's table
  std::string does;  ///< "writes the VTK files": for messages
  std::string needs; ///< "the VTK libraries": likewise
};

/// What the module's entry function returns: a struct whose first member is the version it was built with, as const
/// char*. The module stays loaded. Throws FileError naming the places where it was looked for.
const void* load_module(const ModuleName& name);

/// Where a module is searched, in order: beside the program or library that contains this code, then in its lib
/// directories as built and as installed.
std::vector<std::filesystem::path> module_places(const std::string& file);

} // namespace bedbow
