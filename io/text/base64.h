/// \file
/// Bytes as text, for data inside a page.
#pragma once

#include <cstddef>
#include <span>
#include <string>

namespace bedbow {

/// Base64 of RFC 4648, section 4, padded with '='.
std::string base64(std::span<const std::byte> bytes);

} // namespace bedbow
