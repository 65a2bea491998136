/// \file
/// The local compliance of a land at the corner of a bar, in plane strain.
#pragma once

#include <nlohmann/json.hpp>

namespace referee {

/// Approach and turn by force and couple per length for several heights of the bar, beyond plate theory.
nlohmann::ordered_json local_law();

} // namespace referee
