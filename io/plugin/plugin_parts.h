/// \file
/// Common parts of the kinds of plugins. Only the plugin loader uses this.
#pragma once

#include "io/plugin/bedbow_plugin.h"
#include "io/plugin/plugin.h"

#include <array>
#include <cctype>
#include <cstddef>
#include <string>

namespace bedbow {

/// Buffer for a plugin's message; always terminated at the last byte.
struct PluginMessage {
  std::array<char, 512> text{};
  [[nodiscard]] char* data() { return text.data(); }
  [[nodiscard]] static constexpr std::size_t size() { return 512; }
  /// One line of printable characters.
  std::string str() {
    text.back() = '\0';
    std::string out(text.data());
    for (char& c : out)
      if (static_cast<unsigned char>(c) < ' ') c = ' ';
    return out.empty() ? "it gave no reason" : out;
  }
};

/// An entry whose numbers and texts have been checked.
struct PluginEntry {
  const bedbow_entry& entry;
  std::string place;  ///< "file.so: moment law 'name'", for messages
  std::string origin; ///< "file.so 1.0"

  /// Its table of functions. \tparam Table starts with struct_size. Throws PluginError for another size.
  template <class Table> [[nodiscard]] const Table& functions() const {
    const auto* table = static_cast<const Table*>(entry.functions);
    if (table == nullptr) throw PluginError(place, "has no table of functions");
    if (table->struct_size != sizeof(Table))
      throw PluginError(place, "its table of functions has " + std::to_string(table->struct_size) +
                                   " bytes, expected " + std::to_string(sizeof(Table)) +
                                   "; build it against this version's header");
    return *table;
  }
  /// Throws PluginError where a required function is missing.
  void need(bool there, const char* function) const {
    if (!there) throw PluginError(place, std::string("lacks its function `") + function + "`");
  }
};

/// Register an entry of their kind; throw PluginError, and std::invalid_argument for a name in use.
void add_plugin_law(const PluginEntry& p, Registries& registries);     // plugin_law.cpp
void add_plugin_shape(const PluginEntry& p, Registries& registries);   // plugin_shape.cpp
void add_plugin_element(const PluginEntry& p, Registries& registries); // plugin_element.cpp
void add_plugin_solver(const PluginEntry& p, Registries& registries);  // plugin_solver.cpp
void add_plugin_finding(const PluginEntry& p, Plugins& plugins);       // plugin_finding.cpp
void add_plugin_writer(const PluginEntry& p, Plugins& plugins);        // plugin_writer.cpp

/// "3 values; there was room for 2" and the like: an impossible array extent.
inline std::string lying_size(const char* what, std::size_t claimed, std::size_t room) {
  return "claims " + std::to_string(claimed) + " " + what + "; there was room for " + std::to_string(room);
}

} // namespace bedbow
