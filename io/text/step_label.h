/// \file
/// Names of steps for people.
#pragma once

#include <string>

namespace bedbow {

/// Name of a step as people read it: "clamped" for the step "clamp", whose name would be the body's.
std::string step_label(const std::string& name);

} // namespace bedbow
