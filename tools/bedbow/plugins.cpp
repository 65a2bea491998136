#include "tools/bedbow/plugins.h"

#include "io/json_text.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

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

void load_plugins(const PluginOptions& options, OpenCase& open) {
  for (const std::string& plugin : options.files) load_plugin(plugin, open.registries, open.plugins);
}

OpenCase open_case(const std::string& file, const PluginOptions& options) {
  OpenCase out;
  CaseSource source = read_source(file);
  load_plugins(options, out);
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

void add_written(const Plugins& plugins, const Findings& findings, const nlohmann::ordered_json& json,
                 std::vector<ResultFile>& more) {
  if (plugins.writers.entries().empty()) return;
  const std::string text = json_text(json);
  std::vector<std::string> taken = result_names(findings);
  for (const ResultFile& f : more) taken.push_back(f.name);
  for (const WriterEntry& writer : plugins.writers.entries())
    for (WrittenFile& file : writer.write(findings, text, taken)) {
      taken.push_back(file.name);
      more.push_back({std::move(file.name), std::move(file.content)});
    }
}

} // namespace bedbow
