/// \file
/// A case together with the plugins that it needs: the common entry point of the program and the library.
#pragma once

#include "io/case/case_reader.h"
#include "io/plugin/plugin.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Which plugins may be loaded. They run as part of the program.
struct PluginOptions {
  std::vector<std::string> files; ///< to load first, in this order
  bool allowed = false;           ///< also those that the case names in [plugins]
};

/// Registries with all built-in and plugin entries, and the case read with them.
struct OpenCase {
  Registries registries = builtin_registries();
  Plugins plugins;
  Case value;
};

/// Loads `options.files` only, for use without a case. Throws what load_plugin throws.
void load_plugins(const PluginOptions& options, OpenCase& open);

/// Loads the plugins and reads the case; a case's own plugin files are taken relative to it.
/// Throws what read_case and load_plugin throw, and PluginError where the case requests plugins that are not allowed.
OpenCase open_case(const std::filesystem::path& file, const PluginOptions& options);

/// The same from text; its own plugin files are taken relative to the working directory.
/// \param name name in messages.
OpenCase open_case_text(std::string_view text, const PluginOptions& options, const std::string& name);

} // namespace bedbow
