#include "io/plugin/plugin.h"

#include "io/files/errors.h"
#include "io/plugin/bedbow_plugin.h"
#include "io/plugin/plugin_parts.h"

#include <dlfcn.h>

#include <stdexcept>

namespace bedbow {

namespace {

namespace fs = std::filesystem;

constexpr std::uint32_t most_entries = 1000;

void check_entry(const bedbow_entry& e, const std::string& place) {
  if (e.interface_version != BEDBOW_PLUGIN_INTERFACE)
    throw PluginError(place, "uses interface version " + std::to_string(e.interface_version) + ", this program uses " +
                                 std::to_string(BEDBOW_PLUGIN_INTERFACE) + "; build it against this version's header");
  if (e.struct_size != sizeof(bedbow_entry))
    throw PluginError(place, "its entry has " + std::to_string(e.struct_size) + " bytes, expected " +
                                 std::to_string(sizeof(bedbow_entry)));
  for (const char* text : {e.kind, e.name, e.version, e.description, e.source})
    if (text == nullptr || *text == '\0')
      throw PluginError(place, "kind, name, version, description and source must not be empty");
}

void add_by_kind(const PluginEntry& p, const std::string& file, Registries& registries, Plugins& plugins) {
  const std::string kind = p.entry.kind;
  if (kind == "moment law")
    add_plugin_law(p, registries);
  else if (kind == "section shape")
    add_plugin_shape(p, registries);
  else if (kind == "element")
    add_plugin_element(p, registries);
  else if (kind == "linear solver")
    add_plugin_solver(p, registries);
  else if (kind == "finding")
    add_plugin_finding(p, plugins);
  else if (kind == "result writer")
    add_plugin_writer(p, plugins);
  else
    throw PluginError(file, "provides an unknown kind '" + kind +
                                "'; known: moment law, section shape, element, linear solver, finding, "
                                "result writer");
}

void add_entry(const bedbow_entry& e, const std::string& file, Registries& registries, Plugins& plugins) {
  const PluginEntry p{e, file + ": " + e.kind + " '" + e.name + "'", file + " " + e.version};
  try {
    add_by_kind(p, file, registries, plugins);
  } catch (const std::invalid_argument& taken) {
    throw PluginError(file, taken.what());
  }
  plugins.loaded.push_back(file + ": " + e.name + " " + e.version);
}

} // namespace

void load_plugin(const fs::path& file, Registries& registries, Plugins& plugins) {
  std::error_code error;
  if (!fs::exists(file, error)) throw FileError("load", file, "no such file");
  // An absolute path: a bare name would be searched among the system's libraries.
  void* handle = ::dlopen(fs::absolute(file).c_str(), RTLD_NOW | RTLD_LOCAL);
  if (handle == nullptr) throw FileError("load", file, ::dlerror(), "a plugin is a shared object for this machine");
  using Entry = const bedbow_entry* (*)(std::uint32_t);
  const auto entry = reinterpret_cast<Entry>(::dlsym(handle, "bedbow_plugin"));
  const std::string name = file.filename().string();
  if (entry == nullptr) throw PluginError(name, "does not export bedbow_plugin, so it is not a plugin");
  for (std::uint32_t i = 0;; ++i) {
    const bedbow_entry* e = entry(i);
    if (e == nullptr && i > 0) return;
    if (e == nullptr) throw PluginError(name, "provides no entry");
    if (i >= most_entries) throw PluginError(name, "does not end its entries with NULL");
    check_entry(*e, name);
    add_entry(*e, name, registries, plugins);
  }
}

} // namespace bedbow
