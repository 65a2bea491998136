/// \file
/// Plugins on the command line: --plugin FILE, and those a case asks for where --allow-plugins lets it.
#pragma once

#include "io/case_reader.h"
#include "io/plugin.h"

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace bedbow {

struct PluginOptions {
  std::vector<std::string> files;
  bool allowed = false;
};

/// Adds --plugin and --allow-plugins to a command.
void add_plugin_options(CLI::App& command, PluginOptions& options);

/// Registries with everything built in and brought, and the case read with them.
struct OpenCase {
  Registries registries = builtin_registries();
  Plugins plugins;
  Case value;
};

/// Loads the plugins and reads the case; a case's own plugin files are taken relative to it.
/// Throws what read_case and load_plugin throw, and PluginError where the case asks for plugins without leave.
OpenCase open_case(const std::string& file, const PluginOptions& options);

} // namespace bedbow
