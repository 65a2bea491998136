#include "io/vtk_module.h"

#include "io/errors.h"
#include "io/version.h"

#include <dlfcn.h>

#include <algorithm>

namespace bedbow {

namespace fs = std::filesystem;

namespace {

constexpr const char* file_name = "libbedbow_vtk.so";

/// Directories of the program and, where this code is part of a shared library, of that library.
std::vector<fs::path> homes() {
  std::vector<fs::path> out;
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  if (!error) out.push_back(program.parent_path());
  Dl_info info{};
  if (::dladdr(reinterpret_cast<const void*>(&homes), &info) != 0 && info.dli_fname != nullptr) {
    const fs::path library = fs::canonical(info.dli_fname, error);
    if (!error && (out.empty() || library.parent_path() != out[0])) out.push_back(library.parent_path());
  }
  return out;
}

const VtkModule& load() {
  std::string looked;
  for (const fs::path& place : vtk_module_places()) {
    std::error_code error;
    if (!fs::exists(place, error)) {
      looked += (looked.empty() ? "" : ", ") + place.string();
      continue;
    }
    void* handle = ::dlopen(place.c_str(), RTLD_NOW | RTLD_LOCAL); // kept for the life of the process
    if (handle == nullptr)
      throw FileError("load", place, ::dlerror(), "install the VTK libraries that it was built with");
    using Entry = const VtkModule* (*)();
    const auto entry = reinterpret_cast<Entry>(::dlsym(handle, "bedbow_vtk_module"));
    if (entry == nullptr) throw FileError("load", place, "it is no module of this program", "install bedbow again");
    const VtkModule* module = entry();
    if (module->version != version())
      throw FileError("load", place,
                      std::string("it is of version ") + module->version + ", the program of " + version(),
                      "install both from one build");
    return *module;
  }
  throw FileError("load", file_name, "it writes the VTK files and is in none of its places: " + looked,
                  "install bedbow again, or put it beside the program");
}

} // namespace

std::vector<fs::path> vtk_module_places() {
  std::vector<fs::path> out;
  for (const fs::path& home : homes())
    for (const char* below : {"", "..", "../lib", "../lib/bedbow", "../" BEDBOW_LIBDIR "/bedbow", "bedbow"}) {
      const fs::path place = (home / below / file_name).lexically_normal();
      if (std::find(out.begin(), out.end(), place) == out.end()) out.push_back(place);
    }
  return out;
}

const VtkModule& vtk_module() {
  static const VtkModule& module = load(); // a failed load throws, and the next call tries again
  return module;
}

} // namespace bedbow
