#include "io/plugin/open_case.h"

#include <utility>

namespace bedbow {

namespace {

namespace fs = std::filesystem;

/// \param folder in which the case's own plugin files are searched.
OpenCase open_source(CaseSource source, const fs::path& folder, const PluginOptions& options) {
  OpenCase out;
  load_plugins(options, out);
  const std::vector<std::string> asked = plugin_files(source);
  if (!asked.empty() && !options.allowed)
    throw PluginError(
        asked.front(),
        "the case requests it, but a case must not run code without permission; if you trust it, allow it "
        "(--allow-plugins, or Plugins::of_case in the library)");
  for (const std::string& plugin : asked) load_plugin(folder / plugin, out.registries, out.plugins);
  out.value = understand(std::move(source), out.registries);
  return out;
}

} // namespace

void load_plugins(const PluginOptions& options, OpenCase& open) {
  for (const std::string& plugin : options.files) load_plugin(plugin, open.registries, open.plugins);
}

OpenCase open_case(const fs::path& file, const PluginOptions& options) {
  return open_source(read_source(file), file.parent_path(), options);
}

OpenCase open_case_text(std::string_view text, const PluginOptions& options, const std::string& name) {
  return open_source(source_of_text(text, name), {}, options);
}

} // namespace bedbow
