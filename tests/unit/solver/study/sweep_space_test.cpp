#include "solver/study/sweep_space.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <stdexcept>

namespace bedbow {

TEST(Permutation, TakesEachNumberOnce) {
  for (const std::uint64_t n : {1u, 2u, 3u, 10u, 97u, 1024u, 5000u}) {
    const Permutation order(n, 7);
    std::set<std::uint64_t> seen;
    for (std::uint64_t i = 0; i < n; ++i) seen.insert(order(i));
    EXPECT_EQ(seen.size(), n);
    EXPECT_EQ(*seen.rbegin(), n - 1);
  }
}

TEST(SweepSpace, CombinationsRunLikeNestedLoops) {
  const SweepSpace space({2, 3, 4}, std::nullopt, 1);
  ASSERT_EQ(space.size(), 24U);
  std::uint64_t variant = 0;
  for (std::size_t i = 0; i < 2; ++i)
    for (std::size_t j = 0; j < 3; ++j)
      for (std::size_t k = 0; k < 4; ++k) EXPECT_EQ(space.rows(variant++), (std::vector<std::size_t>{i, j, k}));
}

TEST(SweepSpace, HypercubeTakesEachRowEquallyOften) {
  const SweepSpace space({4, 7, 100}, 1000, 3);
  ASSERT_EQ(space.size(), 1000U);
  std::vector<std::vector<int>> often{std::vector<int>(4), std::vector<int>(7), std::vector<int>(100)};
  for (std::uint64_t v = 0; v < space.size(); ++v) {
    const auto rows = space.rows(v);
    for (std::size_t k = 0; k < rows.size(); ++k) ++often[k][rows[k]];
  }
  for (int n : often[0]) EXPECT_EQ(n, 250);
  for (int n : often[1]) EXPECT_TRUE(n == 142 || n == 143);
  for (int n : often[2]) EXPECT_EQ(n, 10);
}

// Orders that have nothing to do with each other: the correlation of two columns of n independent draws has a standard
// deviation of 1 / sqrt(n); four of them are as good as never exceeded.
TEST(SweepSpace, HypercubeColumnsAreUncorrelated) {
  const std::uint64_t n = 4000;
  const SweepSpace space({n, n, n}, n, 11);
  const double mean = (static_cast<double>(n) - 1) / 2;
  for (auto [a, b] : {std::pair{0, 1}, std::pair{0, 2}, std::pair{1, 2}}) {
    double sum = 0, squares = 0;
    for (std::uint64_t v = 0; v < n; ++v) {
      const auto rows = space.rows(v);
      sum += (static_cast<double>(rows[a]) - mean) * (static_cast<double>(rows[b]) - mean);
      squares += (static_cast<double>(rows[a]) - mean) * (static_cast<double>(rows[a]) - mean);
    }
    EXPECT_LT(std::abs(sum / squares), 4 / std::sqrt(static_cast<double>(n)));
  }
}

TEST(SweepSpace, SaysWhatIsMissing) {
  EXPECT_THROW(SweepSpace({}, std::nullopt, 1), std::invalid_argument);
  EXPECT_THROW(SweepSpace({3, 0}, std::nullopt, 1), std::invalid_argument);
  EXPECT_THROW(SweepSpace({1u << 30, 1u << 30}, std::nullopt, 1), std::invalid_argument);
}

} // namespace bedbow
