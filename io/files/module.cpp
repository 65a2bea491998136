#include "io/files/module.h"

#include "io/files/errors.h"
#include "io/text/version.h"

#include <dlfcn.h>

#include <algorithm>

namespace bedbow {

namespace fs = std::filesystem;

namespace {

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

const void* open(const fs::path& place, const ModuleName& name) {
  void* handle = ::dlopen(place.c_str(), RTLD_NOW | RTLD_LOCAL); // kept for the life of the process
  if (handle == nullptr)
    throw FileError("load", place, ::dlerror(), "install " + name.needs + " with which it was built");
  using Entry = const void* (*)();
  const auto entry = reinterpret_cast<Entry>(::dlsym(handle, name.entry.c_str()));
  if (entry == nullptr) throw FileError("load", place, "it is not a module of this program", "install bedbow again");
  const void* table = entry();
  const char* made_for = *static_cast<const char* const*>(table);
  if (made_for != version())
    throw FileError("load", place,
                    std::string("it belongs to version ") + made_for + ", the program is version " + version(),
                    "install both from one build");
  return table;
}

} // namespace

std::vector<fs::path> module_places(const std::string& file) {
  std::vector<fs::path> out;
  for (const fs::path& home : homes())
    for (const char* below : {"", "..", "../lib", "../lib/bedbow", "../" BEDBOW_LIBDIR "/bedbow", "bedbow"}) {
      const fs::path place = (home / below / file).lexically_normal();
      if (std::find(out.begin(), out.end(), place) == out.end()) out.push_back(place);
    }
  return out;
}

const void* load_module(const ModuleName& name) {
  std::string looked;
  for (const fs::path& place : module_places(name.file)) {
    std::error_code error;
    if (fs::exists(place, error)) return open(place, name);
    looked += (looked.empty() ? "" : ", ") + place.string();
  }
  throw FileError("load", name.file, "it " + name.does + " and was not found in any of: " + looked,
                  "install bedbow again, or put it beside the program");
}

} // namespace bedbow
