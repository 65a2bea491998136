#include "io/text/base64.h"

#include <array>
#include <cstdint>

namespace bedbow {

std::string base64(std::span<const std::byte> bytes) {
  static constexpr const char* letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  out.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t left = std::min<std::size_t>(3, bytes.size() - i);
    std::uint32_t group = 0;
    for (std::size_t k = 0; k < 3; ++k)
      group = group << 8U | (k < left ? std::to_integer<std::uint32_t>(bytes[i + k]) : 0U);
    for (std::size_t k = 0; k < 4; ++k) out += k <= left ? letters[group >> (18 - 6 * k) & 63U] : '=';
  }
  return out;
}

} // namespace bedbow
