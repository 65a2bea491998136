#include "io/units/output_units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace bedbow {

TEST(OutputUnits, DecimalsFollowTheUnit) {
  EXPECT_EQ(decimals_for({"mm", 1e-3}, 1e-6), 3);
  EXPECT_EQ(decimals_for({"in", 0.0254}, 1e-6), 4);
  EXPECT_EQ(decimals_for({"m", 1}, 1e-6), 6);
  EXPECT_EQ(decimals_for({"N", 1}, 10), 0);
  EXPECT_EQ(decimals_for({"kN", 1e3}, 10), 2);
}

TEST(OutputUnits, ValuesAreConverted) {
  EXPECT_EQ(in_unit(0.0254, {"in", 0.0254}, 1e-6), "1.0000");
  EXPECT_EQ(in_unit(0.00012345, {"mm", 1e-3}, 1e-6), "0.123");
  EXPECT_EQ(in_unit(12345, {"kN", 1e3}, 10), "12.35");
}

TEST(OutputUnits, OddNumbersStayReadable) {
  EXPECT_EQ(fixed(-0.0001, 3), "0.000");
  EXPECT_EQ(fixed(-0.0006, 3), "-0.001");
  EXPECT_EQ(fixed(std::nan(""), 2), "-");
  EXPECT_EQ(fixed(-std::numeric_limits<double>::infinity(), 2), "-inf");
  EXPECT_EQ(fixed(std::numeric_limits<double>::max(), 0).size(), 309U);
}

} // namespace bedbow
