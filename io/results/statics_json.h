/// \file
/// What results.json says so that its forces can be added up: parts, what joins them, what loads them, where they
/// press.
#pragma once

#include "solver/findings/findings.h"

#include <nlohmann/json_fwd.hpp>

#include <vector>

namespace bedbow {

/// The list `parts`.
nlohmann::ordered_json parts_json(const std::vector<PartResult>& parts);

/// Adds to a joint's entry what it joins and, where that takes more than its place, where.
void add_joined(const JointResult& joint, nlohmann::ordered_json& item);

/// Adds `loads` and `contacts` to a step's entry.
void add_statics(const StepResult& step, nlohmann::ordered_json& item);

} // namespace bedbow
