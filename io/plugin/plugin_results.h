/// \file
/// Additions of plugins' findings and result writers to a solved case.
#pragma once

#include "io/plugin/plugin.h"
#include "io/results/result_files.h"

#include <nlohmann/json_fwd.hpp>

#include <vector>

namespace bedbow {

/// Puts the plugins' findings under `findings`, by the finding's name. Throws PluginError.
void add_findings(const Plugins& plugins, const Findings& findings, nlohmann::ordered_json& json);

/// Adds the files of the result writers that were loaded. \param json content of results.json. Throws PluginError.
void add_written(const Plugins& plugins, const Findings& findings, const nlohmann::ordered_json& json,
                 std::vector<ResultFile>& more);

} // namespace bedbow
