/// \file
/// Published limits of push and pull forces of a person, with which hand forces are compared.
#pragma once

#include "solver/strength/allowable.h"

#include <span>
#include <string>
#include <string_view>

namespace bedbow {

enum class EffortKind {
  recommended, ///< a standard's basic limit for healthy adults at work, before its factors for speed, frequency, time
  strength     ///< mean of the greatest forces measured in a laboratory: not a limit for work
};

struct EffortLimit {
  std::string key; ///< "arm down"
  EffortKind kind = EffortKind::recommended;
  double force = 0;   ///< [N]
  std::string source; ///< with its status
};

/// All published limits known here.
std::span<const EffortLimit> effort_limits();

/// The limit of that key, or nullptr.
const EffortLimit* find_effort_limit(std::string_view key);

/// A hand force [N] of one person against one limit; the check is named after the limit's key.
/// Throws std::invalid_argument listing the keys for an unknown one.
Check check_effort(double force, std::string_view key, std::optional<double> own = {});

} // namespace bedbow
