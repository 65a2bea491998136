/// \file
/// SHA-256, so that a result can name the case that made it.
#pragma once

#include <string>
#include <string_view>

namespace bedbow {

/// SHA-256 of the bytes, as 64 lower-case hexadecimal digits. Source: FIPS 180-4.
std::string sha256(std::string_view bytes);

} // namespace bedbow
