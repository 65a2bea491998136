#include "mesh/piece/material.h"

#include <gtest/gtest.h>

namespace bedbow {

namespace {
/// Thickness [m] by the table of that name.
std::optional<double> by(const char* table, int gauge) {
  return gauge_thickness(gauge_tables().get(table), gauge);
}
} // namespace

TEST(Gauge, NumbersOutsideTheTablesAreRefused) {
  for (const GaugeTable& t : gauge_tables().entries()) {
    EXPECT_FALSE(gauge_thickness(t, -1));
    EXPECT_FALSE(gauge_thickness(t, 99));
    EXPECT_TRUE(gauge_thickness(t, 16));
  }
  EXPECT_THROW((void)by("none such", 16), std::invalid_argument);
  EXPECT_FALSE(by("steel", 2));
  EXPECT_FALSE(by("steel", 31));
}

TEST(Gauge, ThinnerWithEveryNumber) {
  for (const GaugeTable& t : gauge_tables().entries())
    for (int n = 8; n < 30; ++n) EXPECT_GT(*gauge_thickness(t, n), *gauge_thickness(t, n + 1)) << n;
}

// A galvanised gauge is the steel gauge with its coating on: 0.0037 in more at every number.
TEST(Gauge, GalvanisedIsSteelPlusCoating) {
  for (int n = 8; n <= 30; ++n)
    EXPECT_NEAR(*by("galvanised", n) - *by("steel", n), 0.0037 * 0.0254, 0.00011 * 0.0254) << n;
}

// The US standard gauge goes in fractions of an inch (from memory).
TEST(Gauge, StainlessGoesInFractionsOfAnInch) {
  EXPECT_NEAR(*by("stainless", 11), 0.0254 / 8, 1e-9);
  EXPECT_NEAR(*by("stainless", 16), 0.0254 / 16, 1e-9);
  EXPECT_NEAR(*by("stainless", 22), 0.0254 / 32, 0.00006 * 0.0254);
  EXPECT_NEAR(*by("stainless", 28), 0.0254 / 64, 0.00006 * 0.0254);
}

} // namespace bedbow
