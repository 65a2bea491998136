#include "solver/study/first_order.h"
#include "solver/study/sweep_space.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {

// y = a + 2 b + a c with a, b, c = -1, 1: an orthogonal design whose variance splits as 1 : 4 : (interaction) 1.
TEST(FirstOrderShares, ExactForAFactorialDesign) {
  const SweepSpace space({2, 2, 2}, std::nullopt, 1);
  FirstOrderShares shares(space.counts());
  for (std::uint64_t v = 0; v < space.size(); ++v) {
    const auto rows = space.rows(v);
    const auto sign = [&](int k) { return rows[k] ? 1.0 : -1.0; };
    shares.add(rows, 1000 + sign(0) + 2 * sign(1) + sign(0) * sign(2));
  }
  const auto s = shares.shares(false);
  EXPECT_NEAR(s[0], 1.0 / 6, 1e-12);
  EXPECT_NEAR(s[1], 4.0 / 6, 1e-12);
  EXPECT_NEAR(s[2], 0, 1e-12);
}

// The Ishigami function sin x1 + 7 sin^2 x2 + 0.1 x3^4 sin x1 on (-pi, pi): S1 = 0.3139, S2 = 0.4424, S3 = 0.
// Source: Ishigami & Homma, ISUMA 1990; figures as in Saltelli et al., Global Sensitivity Analysis: The Primer, 2008
// (from memory). A share from n samples in 32 groups scatters by about 1 / sqrt(n); four times that is allowed.
TEST(FirstOrderShares, IshigamiFromAHypercube) {
  const std::uint64_t n = 40000;
  const SweepSpace space({32, 32, 32}, n, 5);
  FirstOrderShares shares(space.counts());
  for (std::uint64_t v = 0; v < n; ++v) {
    const auto rows = space.rows(v);
    const auto x = [&](int k) { return std::numbers::pi * ((2.0 * static_cast<double>(rows[k]) + 1) / 32 - 1); };
    const double s2 = std::sin(x(1));
    shares.add(rows, std::sin(x(0)) + 7 * s2 * s2 + 0.1 * std::pow(x(2), 4) * std::sin(x(0)));
  }
  const auto s = shares.shares(true);
  const double scatter = 4 / std::sqrt(static_cast<double>(n));
  EXPECT_NEAR(s[0], 0.3139, scatter);
  EXPECT_NEAR(s[1], 0.4424, scatter);
  EXPECT_NEAR(s[2], 0, scatter);
}

TEST(FirstOrderShares, NothingVariesNothingMatters) {
  FirstOrderShares shares({2});
  shares.add({0}, 3);
  shares.add({1}, 3);
  EXPECT_EQ(shares.shares(false)[0], 0);
}

} // namespace bedbow
