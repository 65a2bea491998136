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

TEST(QuantitiesOut, KeysTellTheirUnit) {
  using Pair = std::pair<std::string, double>;
  EXPECT_EQ(in_file_unit("gap_m", 0.5), Pair("gap_mm", 500));
  EXPECT_EQ(in_file_unit("bending_Pa", 3e6), Pair("bending_MPa", 3));
  EXPECT_EQ(in_file_unit("shaft_N_m", 2), Pair("shaft_N_mm", 2000));
  EXPECT_EQ(in_file_unit("preload_loss_N", 7), Pair("preload_loss_N", 7));
  EXPECT_EQ(in_file_unit("screws", 7), Pair("screws", 7));
}

TEST(QuantitiesOut, TwelveDigits) {
  EXPECT_EQ(twelve_digits(0.1 + 0.2), 0.3);
  EXPECT_EQ(twelve_digits(1.0 / 3), 0.333333333333);
  EXPECT_TRUE(std::isnan(twelve_digits(std::nan(""))));
}

} // namespace bedbow
