#include "tools/bedbow/plugins.h"

#include <CLI/CLI.hpp>

namespace bedbow {

void add_plugin_options(CLI::App& command, PluginOptions& options) {
  command.add_option("--plugin", options.files, "shared object with further moment laws or findings; repeatable")
      ->allow_extra_args(false);
  command.add_flag(
      "--allow-plugins", options.allowed,
      "load what the case's [plugins] names; it runs as your own program does, so only from cases you trust");
}

OpenCase open_case(const std::string& file, const PluginOptions& options) {
  OpenCase out;
  CaseSource source = read_source(file);
  for (const std::string& plugin : options.files) load_plugin(plugin, out.registries, out.plugins);
  const std::vector<std::string> asked = plugin_files(source);
  if (!asked.empty() && !options.allowed)
    throw PluginError(asked.front(),
                      "the case asks for it, and a case from elsewhere must not run code; if you trust it, "
                      "say --allow-plugins");
  for (const std::string& plugin : asked)
    load_plugin(std::filesystem::path(file).parent_path() / plugin, out.registries, out.plugins);
  out.value = understand(std::move(source), out.registries);
  return out;
}

} // namespace bedbow
