/// \file
/// Plugins on the command line: --plugin FILE, and those a case asks for where --allow-plugins lets it.
#pragma once

#include "io/plugin/open_case.h"
#include "io/plugin/plugin_results.h"

namespace CLI {
class App;
}

namespace bedbow {

/// Adds --plugin to a command that reads no case.
void add_plugin_option(CLI::App& command, PluginOptions& options);

/// Adds --plugin and --allow-plugins to a command.
void add_plugin_options(CLI::App& command, PluginOptions& options);

} // namespace bedbow
