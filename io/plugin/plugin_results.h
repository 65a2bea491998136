/// \file
/// What the findings and result writers of plugins add to a solved case.
#pragma once

#include "io/plugin/plugin.h"
#include "io/results/result_files.h"

#include <nlohmann/json_fwd.hpp>

#include <vector>

namespace bedbow {

/// Puts what plugins find under `findings`, by the finding's name. Throws PluginError.
void add_findings(const Plugins& plugins, const Findings& findings, nlohmann::ordered_json& json);

/// Adds the files of the result writers that were loaded. \param json what results.json holds. Throws PluginError.
void add_written(const Plugins& plugins, const Findings& findings, const nlohmann::ordered_json& json,
                 std::vector<ResultFile>& more);

} // namespace bedbow
