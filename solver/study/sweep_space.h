/// \file
/// Variants of a sweep: every combination of rows, or a Latin hypercube of them. Any variant can be requested by its
/// number, so that memory does not grow with their number.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace bedbow {

/// A permutation of 0 .. size-1 that needs no memory: a Feistel network on the bits, iterated until it lands inside.
/// Source: Black & Rogaway, Ciphers with Arbitrary Finite Domains, CT-RSA 2002 (cycle walking).
class Permutation {
public:
  /// \param size > 0. \param key which of the permutations.
  Permutation(std::uint64_t size, std::uint64_t key);
  [[nodiscard]] std::uint64_t operator()(std::uint64_t i) const;

private:
  [[nodiscard]] std::uint64_t once(std::uint64_t i) const;
  std::uint64_t size_, key_;
  int half_ = 1; ///< bits of one half
};

class SweepSpace {
public:
  /// \param rows number of rows of each varied quantity, all > 0.
  /// \param sample size of a Latin hypercube; every combination where omitted. \param seed of the hypercube.
  /// Throws std::invalid_argument where there is nothing to vary or more combinations than 2^53.
  SweepSpace(std::vector<std::size_t> rows, std::optional<std::uint64_t> sample, std::uint64_t seed);

  /// Number of variants.
  [[nodiscard]] std::uint64_t size() const { return size_; }
  /// Row of each varied quantity. Combinations run like nested loops: the last one changes fastest. In a hypercube of N
  /// each quantity takes each of its rows equally often (to within one), in its own order.
  /// \param variant 0 .. size()-1.
  [[nodiscard]] std::vector<std::size_t> rows(std::uint64_t variant) const;
  /// Number of rows by varied quantity.
  [[nodiscard]] const std::vector<std::size_t>& counts() const { return counts_; }
  [[nodiscard]] bool sampled() const { return !orders_.empty(); }

private:
  std::vector<std::size_t> counts_;
  std::vector<Permutation> orders_; ///< of a hypercube, by thing varied
  std::uint64_t size_ = 1;
};

} // namespace bedbow
