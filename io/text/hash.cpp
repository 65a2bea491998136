#include "io/text/hash.h"

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

namespace bedbow {

namespace {

using State = std::array<std::uint32_t, 8>;

/// Root tables of FIPS 180-4, sections 4.2.2 and 5.3.3: the first 32 bits of the fractional parts of the square roots
/// of the first 8 primes and the cube roots of the first 64.
struct Tables {
  State start{};
  std::array<std::uint32_t, 64> round{};
  Tables() {
    auto fraction = [](long double root) {
      return static_cast<std::uint32_t>((root - std::floor(root)) * 4294967296.0L);
    };
    std::size_t found = 0;
    for (int p = 2; found < round.size(); ++p) {
      bool prime = true;
      for (int d = 2; d * d <= p; ++d) prime = prime && p % d != 0;
      if (!prime) continue;
      if (found < start.size()) start[found] = fraction(std::sqrt(static_cast<long double>(p)));
      round[found++] = fraction(std::cbrt(static_cast<long double>(p)));
    }
  }
};

void absorb(State& state, const unsigned char* block, const Tables& tables) {
  std::array<std::uint32_t, 64> w{};
  for (std::size_t i = 0; i < 16; ++i)
    for (std::size_t b = 0; b < 4; ++b) w[i] = w[i] << 8 | block[4 * i + b];
  for (std::size_t i = 16; i < 64; ++i) {
    const std::uint32_t s0 = std::rotr(w[i - 15], 7) ^ std::rotr(w[i - 15], 18) ^ w[i - 15] >> 3;
    const std::uint32_t s1 = std::rotr(w[i - 2], 17) ^ std::rotr(w[i - 2], 19) ^ w[i - 2] >> 10;
    w[i] = w[i - 16] + s0 + w[i - 7] + s1;
  }
  auto [a, b, c, d, e, f, g, h] = state;
  for (std::size_t i = 0; i < 64; ++i) {
    const std::uint32_t s1 = std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25);
    const std::uint32_t t1 = h + s1 + ((e & f) ^ (~e & g)) + tables.round[i] + w[i];
    const std::uint32_t s0 = std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22);
    const std::uint32_t t2 = s0 + ((a & b) ^ (a & c) ^ (b & c));
    h = g, g = f, f = e, e = d + t1, d = c, c = b, b = a, a = t1 + t2;
  }
  const State add{a, b, c, d, e, f, g, h};
  for (std::size_t i = 0; i < 8; ++i) state[i] += add[i];
}

} // namespace

std::string sha256(std::string_view bytes) {
  static const Tables tables;
  State state = tables.start;
  const auto* data = reinterpret_cast<const unsigned char*>(bytes.data());
  const std::size_t whole = bytes.size() / 64;
  for (std::size_t i = 0; i < whole; ++i) absorb(state, data + 64 * i, tables);

  std::array<unsigned char, 128> tail{};
  const std::size_t rest = bytes.size() % 64;
  for (std::size_t i = 0; i < rest; ++i) tail[i] = data[64 * whole + i];
  tail[rest] = 0x80;
  const std::size_t blocks = rest < 56 ? 1 : 2;
  const std::uint64_t bits = static_cast<std::uint64_t>(bytes.size()) * 8;
  for (std::size_t i = 0; i < 8; ++i) tail[64 * blocks - 1 - i] = static_cast<unsigned char>(bits >> 8 * i);
  for (std::size_t i = 0; i < blocks; ++i) absorb(state, tail.data() + 64 * i, tables);

  std::string hex;
  for (const std::uint32_t word : state)
    for (int shift = 28; shift >= 0; shift -= 4) hex += "0123456789abcdef"[word >> shift & 15U];
  return hex;
}

} // namespace bedbow
