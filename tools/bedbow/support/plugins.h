/// \file
/// Plugins on the command line: --plugin FILE, and with --allow-plugins those that a case requests.
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
