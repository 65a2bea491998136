/// \file
/// Names of steps used in the code.
#pragma once

namespace bedbow {

/// Name of the step in which the sheet is clamped and nothing is bent yet.
inline constexpr const char* clamp_step = "clamp";

} // namespace bedbow
