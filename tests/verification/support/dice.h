/// \file
/// Draws for random machines.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>

namespace bedbow::verification {

/// Draws that depend on nothing but the seed: the standard's engine is the same everywhere, its distributions are not.
class Dice {
public:
  explicit Dice(std::uint64_t seed)
      : random_(seed) {}
  double between(double least, double most) {
    return least + (most - least) * (static_cast<double>(random_() >> 11) * 0x1p-53);
  }
  /// On a grid, as on a drawing [mm].
  double on_grid(double least, double most, double grid = 0.1) {
    return std::round(between(least, most) / grid) / std::round(1 / grid);
  }
  int whole(int least, int most) {
    return least + static_cast<int>(random_() % static_cast<std::uint64_t>(most - least + 1));
  }
  bool chance(double share) { return between(0, 1) < share; }
  template <std::size_t n> double of(const std::array<double, n>& values) {
    return values[static_cast<std::size_t>(whole(0, static_cast<int>(n) - 1))];
  }

private:
  std::mt19937_64 random_;
};

} // namespace bedbow::verification
