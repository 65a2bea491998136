/// \file
/// Checks that the shape makers share.
#pragma once

#include "mesh/piece/section.h"

#include <string_view>

namespace bedbow {

/// Throws std::invalid_argument unless the size is finite and > 0: "rectangle: height must be greater than 0, ...".
void require_size(const Shape& shape, std::string_view size, double value);

/// Throws unless 0 < wall < limit. \param of_what what the limit is, "half of the lesser side".
void require_wall(const Shape& shape, double limit, std::string_view of_what);

} // namespace bedbow
