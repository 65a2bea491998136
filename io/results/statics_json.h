/// \file
/// Data in results.json with which the equilibrium of its forces can be checked: parts, joints, loads and contacts.
#pragma once

#include "solver/findings/findings.h"

#include <nlohmann/json_fwd.hpp>

#include <vector>

namespace bedbow {

/// The list `parts`.
nlohmann::ordered_json parts_json(const std::vector<PartResult>& parts);

/// Adds to a joint's entry the parts that it joins and, where its place is not sufficient, the points.
void add_joined(const JointResult& joint, nlohmann::ordered_json& item);

/// Adds `loads` and `contacts` to a step's entry.
void add_statics(const StepResult& step, nlohmann::ordered_json& item);

} // namespace bedbow
