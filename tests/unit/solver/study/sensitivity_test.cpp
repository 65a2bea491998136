#include "solver/study/sensitivity.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

// Bow of a beam 5 q L^4/(384 E I), I = b h^3/12: per 1 % of h it falls by 3 %, per 1 % of L it grows by 4 %.
Watched bow_of(double L, double h) {
  const double w = 5.0 / 384 * 1e4 * std::pow(L, 4) / (210e9 * 0.02 * std::pow(h, 3) / 12);
  return {w, std::nan(""), 0, 2 * w};
}

TEST(Sensitivity, IsThePowerLawsExponent) {
  const Watched base = bow_of(0.9, 0.08);
  const Sensitivity h =
      sensitivity("h", base, 0.0008, 0.0008, [](double d) { return std::optional(bow_of(0.9, 0.08 + d)); });
  // Central differences over +-0.5 %: (1 - x)^-3 has a third derivative of 60, error 60/6 x^2 = 2.5e-4 of 3.
  EXPECT_NEAR(h.change[0] / base[0], -0.03, 0.03 * 2e-4);
  EXPECT_NEAR(h.change[3] / base[3], -0.03, 0.03 * 2e-4);
  EXPECT_LT(h.error[0], 0.03 * base[0] * 1e-3);
  // The error shown covers what is wrong with it.
  EXPECT_GE(h.error[0], std::abs(h.change[0] + 0.03 * base[0]));
  const Sensitivity L =
      sensitivity("L", base, 0.009, 0.0001, [](double d) { return std::optional(bow_of(0.9 + d, 0.08)); });
  EXPECT_NEAR(L.change[0] / base[0], 0.04, 1e-6);
  std::vector<Sensitivity> list{h, L,
                                sensitivity("broken", base, 1, 1, [](double) { return std::optional<Watched>(); })};
  sort_by_weight(list);
  EXPECT_EQ(list[0].name, "L");
  EXPECT_FALSE(list[2].solved);
}

// f = x^2 from x = 1 up only: one-sided differences of second order are exact, the slope is 2.
TEST(Sensitivity, GoesOneWayWhereTheOtherMakesNoMachine) {
  for (const double side : {1.0, -1.0}) {
    const Sensitivity s = sensitivity("x", {1, 1, 1, 1}, 0.01, 0.01, [&](double d) {
      const double f = (1 + d) * (1 + d);
      return side * d < 0 ? std::nullopt : std::optional(Watched{f, f, f, f});
    });
    EXPECT_TRUE(s.solved);
    EXPECT_TRUE(s.one_way);
    EXPECT_NEAR(s.change[0], 0.02, 1e-12);
    EXPECT_NEAR(s.error[0], 0, 1e-12);
  }
}

// A kink: the two differences disagree by it.
TEST(Sensitivity, ShowsAKink) {
  const Sensitivity s = sensitivity("x", {1, 1, 1, 1}, 1e-3, 1e-3, [](double d) {
    const double y = 1 + (d > 0.6e-3 ? 5 * (d - 0.6e-3) : 0.0);
    return std::optional(Watched{y, y, y, y});
  });
  EXPECT_NEAR(s.change[0], 0, 1e-15);
  EXPECT_NEAR(s.error[0], 1e-3, 1e-12);
}

} // namespace
} // namespace bedbow
