/// \file
/// Plugins on the command line: --plugin FILE, and those a case asks for where --allow-plugins lets it.
#pragma once

#include "io/case_reader.h"
#include "io/plugin.h"
#include "io/result_files.h"

#include <nlohmann/json_fwd.hpp>

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

/// Adds --plugin to a command that reads no case.
void add_plugin_option(CLI::App& command, PluginOptions& options);

/// Adds --plugin and --allow-plugins to a command.
void add_plugin_options(CLI::App& command, PluginOptions& options);

/// Registries with everything built in and brought, and the case read with them.
struct OpenCase {
  Registries registries = builtin_registries();
  Plugins plugins;
  Case value;
};

/// Loads the plugins of the command line only, for commands without a case.
void load_plugins(const PluginOptions& options, OpenCase& open);

/// Loads the plugins and reads the case; a case's own plugin files are taken relative to it.
/// Throws what read_case and load_plugin throw, and PluginError where the case asks for plugins without leave.
OpenCase open_case(const std::string& file, const PluginOptions& options);

/// Adds the files of the result writers that were loaded. \param json what results.json holds.
void add_written(const Plugins& plugins, const Findings& findings, const nlohmann::ordered_json& json,
                 std::vector<ResultFile>& more);

} // namespace bedbow
