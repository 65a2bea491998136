#include "io/units/quantities_out.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

TEST(QuantitiesOut, FileUnits) {
  EXPECT_DOUBLE_EQ(to_mm(0.0254), 25.4);
  EXPECT_DOUBLE_EQ(to_MPa(275e6), 275);
  EXPECT_DOUBLE_EQ(to_deg(std::acos(-1.0) / 2), 90);
  EXPECT_DOUBLE_EQ(to_N_per_mm(8000), 8);
  EXPECT_DOUBLE_EQ(to_N_mm(2), 2000);
}

TEST(QuantitiesOut, UnitsOfKeys) {
  EXPECT_STREQ(file_unit(Quantity::length).suffix, "_mm");
  EXPECT_DOUBLE_EQ(0.5 * file_unit(Quantity::length).scale, 500);
  EXPECT_DOUBLE_EQ(3e6 * file_unit(Quantity::stress).scale, 3);
  EXPECT_STREQ(file_unit(Quantity::moment).suffix, "_Nm");
  EXPECT_DOUBLE_EQ(7 * file_unit(Quantity::ratio).scale, 7);
}

TEST(QuantitiesOut, TwelveDigits) {
  EXPECT_EQ(twelve_digits(0.1 + 0.2), 0.3);
  EXPECT_EQ(twelve_digits(1.0 / 3), 0.333333333333);
  EXPECT_TRUE(std::isnan(twelve_digits(std::nan(""))));
}

} // namespace bedbow
