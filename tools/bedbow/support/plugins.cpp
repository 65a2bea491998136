#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>

namespace bedbow {

void add_plugin_option(CLI::App& command, PluginOptions& options) {
  command.add_option("--plugin", options.files, "shared object that brings something of its own; repeatable")
      ->allow_extra_args(false);
}

void add_plugin_options(CLI::App& command, PluginOptions& options) {
  add_plugin_option(command, options);
  command.add_flag(
      "--allow-plugins", options.allowed,
      "load what the case's [plugins] names; it runs as your own program does, so only from cases you trust");
}

} // namespace bedbow
