#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>

namespace bedbow {

void add_plugin_option(CLI::App& command, PluginOptions& options) {
  command.add_option("--plugin", options.files, "plugin to load (a shared object); repeatable")
      ->allow_extra_args(false);
}

void add_plugin_options(CLI::App& command, PluginOptions& options) {
  add_plugin_option(command, options);
  command.add_flag(
      "--allow-plugins", options.allowed,
      "load the plugins named in the case's [plugins]; they run with your permissions, so only for cases you trust");
}

} // namespace bedbow
