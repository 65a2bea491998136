#include "mesh/piece/material.h"

#include <gtest/gtest.h>

namespace bedbow {

namespace {
constexpr GaugeTable tables[] = {GaugeTable::steel, GaugeTable::galvanised, GaugeTable::stainless,
                                 GaugeTable::aluminium};
} // namespace

TEST(Gauge, NumbersOutsideTheTablesAreRefused) {
  for (const GaugeTable t : tables) {
    EXPECT_FALSE(gauge_thickness(t, -1));
    EXPECT_FALSE(gauge_thickness(t, 99));
    EXPECT_TRUE(gauge_thickness(t, 16));
  }
  EXPECT_FALSE(gauge_thickness(GaugeTable::none, 16));
  EXPECT_FALSE(gauge_thickness(GaugeTable::steel, 2));
  EXPECT_FALSE(gauge_thickness(GaugeTable::steel, 31));
}

TEST(Gauge, ThinnerWithEveryNumber) {
  for (const GaugeTable t : tables)
    for (int n = 8; n < 30; ++n) EXPECT_GT(*gauge_thickness(t, n), *gauge_thickness(t, n + 1)) << n;
}

// A galvanised gauge is the steel gauge with its coating on: 0.0037 in more at every number.
TEST(Gauge, GalvanisedIsSteelPlusCoating) {
  for (int n = 8; n <= 30; ++n)
    EXPECT_NEAR(*gauge_thickness(GaugeTable::galvanised, n) - *gauge_thickness(GaugeTable::steel, n), 0.0037 * 0.0254,
                0.00011 * 0.0254)
        << n;
}

// The US standard gauge goes in fractions of an inch (from memory).
TEST(Gauge, StainlessGoesInFractionsOfAnInch) {
  EXPECT_NEAR(*gauge_thickness(GaugeTable::stainless, 11), 0.0254 / 8, 1e-9);
  EXPECT_NEAR(*gauge_thickness(GaugeTable::stainless, 16), 0.0254 / 16, 1e-9);
  EXPECT_NEAR(*gauge_thickness(GaugeTable::stainless, 22), 0.0254 / 32, 0.00006 * 0.0254);
  EXPECT_NEAR(*gauge_thickness(GaugeTable::stainless, 28), 0.0254 / 64, 0.00006 * 0.0254);
}

} // namespace bedbow
