#include "solver/study/sweep_space.h"

#include <bit>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr std::uint64_t most_variants = std::uint64_t{1} << 53; // largest integer range of a double

/// Mixes all bits. Source: Steele, Lea & Flood, Fast splittable pseudorandom number generators, OOPSLA 2014
/// (SplitMix64's finalizer).
std::uint64_t mix(std::uint64_t z) {
  z += 0x9e3779b97f4a7c15U;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
  return z ^ (z >> 31);
}

constexpr int rounds = 6;

} // namespace

Permutation::Permutation(std::uint64_t size, std::uint64_t key)
    : size_(size)
    , key_(mix(key)) {
  half_ = (std::bit_width(size - 1) + 1) / 2;
  if (half_ == 0) half_ = 1;
}

std::uint64_t Permutation::once(std::uint64_t i) const {
  const std::uint64_t mask = (std::uint64_t{1} << half_) - 1;
  std::uint64_t left = i >> half_;
  std::uint64_t right = i & mask;
  for (int r = 0; r < rounds; ++r) {
    const std::uint64_t next = left ^ (mix(right ^ mix(key_ + static_cast<std::uint64_t>(r))) & mask);
    left = right;
    right = next;
  }
  return left << half_ | right;
}

std::uint64_t Permutation::operator()(std::uint64_t i) const {
  do i = once(i);
  while (i >= size_);
  return i;
}

SweepSpace::SweepSpace(std::vector<std::size_t> rows, std::optional<std::uint64_t> sample, std::uint64_t seed)
    : counts_(std::move(rows)) {
  if (counts_.empty()) throw std::invalid_argument("the case has no [sweep] with a [[sweep.vary]]: nothing to vary");
  for (const std::size_t n : counts_) {
    if (n == 0) throw std::invalid_argument("a [[sweep.vary]] has no values");
    if (!sample && n > most_variants / size_)
      throw std::invalid_argument("too many combinations; give [sweep] a `sample`");
    if (!sample) size_ *= n;
  }
  if (!sample) return;
  size_ = *sample;
  for (std::size_t k = 0; k < counts_.size(); ++k) orders_.emplace_back(size_, mix(seed) + k);
}

std::vector<std::size_t> SweepSpace::rows(std::uint64_t variant) const {
  std::vector<std::size_t> out(counts_.size());
  if (sampled()) {
    for (std::size_t k = 0; k < out.size(); ++k)
      out[k] = static_cast<std::size_t>(static_cast<unsigned __int128>(orders_[k](variant)) * counts_[k] / size_);
    return out;
  }
  for (std::size_t k = out.size(); k-- > 0;) {
    out[k] = static_cast<std::size_t>(variant % counts_[k]);
    variant /= counts_[k];
  }
  return out;
}

} // namespace bedbow
