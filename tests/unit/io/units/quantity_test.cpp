#include "io/units/quantity.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

bool says(const ParsedQuantity& q, std::string_view words) {
  return q.trouble.find(words) != std::string::npos;
}

TEST(Quantity, InSiUnits) {
  EXPECT_DOUBLE_EQ(parse_quantity("900 mm", Dim::length).value, 0.9);
  EXPECT_DOUBLE_EQ(parse_quantity("35 7/16 in", Dim::length).value, 35.4375 * 0.0254);
  EXPECT_DOUBLE_EQ(parse_quantity("1½ in", Dim::length).value, 1.5 * 0.0254);
  EXPECT_DOUBLE_EQ(parse_quantity("2.5kN ", Dim::force).value, 2500);
  EXPECT_DOUBLE_EQ(parse_quantity("-90 deg", Dim::angle).value, -std::acos(0.0));
  EXPECT_DOUBLE_EQ(parse_quantity("7850 kg/m^3", Dim::density).value, 7850);
  EXPECT_DOUBLE_EQ(parse_quantity("20 N/mm", Dim::stiffness).value, 20e3);
}

TEST(Quantity, WrongKindReportsFoundAndExpected) {
  const ParsedQuantity q = parse_quantity("800 N", Dim::length);
  EXPECT_TRUE(std::isnan(q.value));
  EXPECT_TRUE(says(q, "\"800 N\" is a force; expected a length, as in \"900 mm\"")) << q.trouble;
  EXPECT_TRUE(says(parse_quantity("800 N", Dim::length, "16 mm"), "as in \"16 mm\""));
  EXPECT_TRUE(says(parse_quantity("5 kg", Dim::force), "a weight is written in kgf, lbf or N"));
  EXPECT_TRUE(says(parse_quantity("5 N", Dim::mass), "a mass is written in kg or lb"));
  EXPECT_TRUE(says(parse_quantity("5 N*m", Dim::rotational_stiffness), "it is a moment per angle"));
}

TEST(Quantity, WithoutOrWithUnknownUnit) {
  EXPECT_TRUE(says(parse_quantity("12", Dim::length), "\"12\" has no unit; expected a length"));
  EXPECT_TRUE(says(parse_quantity("5/8\"", Dim::length), "inches are written \"in\""));
  EXPECT_TRUE(says(parse_quantity("16 ga", Dim::length), "which only a sheet thickness may be"));
  EXPECT_TRUE(says(parse_quantity("3 ft 2 in", Dim::length), "one number and one unit each"));
  EXPECT_TRUE(says(parse_quantity("nan mm", Dim::length), "must be finite"));
  EXPECT_EQ(without_unit("12", Dim::force, "5 kN"), "12 has no unit; expected a force, as in \"5 kN\"");
}

TEST(Quantity, TooLarge) {
  EXPECT_TRUE(says(parse_quantity("1e9 km", Dim::length), "is too large"));
  EXPECT_TRUE(says(parse_quantity("-1e9 km", Dim::length), "is too large"));
  const double most = info(Dim::length).greatest;
  EXPECT_TRUE(parse_quantity(std::to_string(most) + " m", Dim::length).ok());
}

TEST(Quantity, Gauges) {
  EXPECT_EQ(parse_gauge("16 ga"), 16);
  EXPECT_EQ(parse_gauge("16gauge "), 16);
  EXPECT_EQ(parse_gauge("16.5 ga"), -1) << "a gauge that no table has";
  EXPECT_EQ(parse_gauge("16 mm"), std::nullopt);
  EXPECT_EQ(parse_gauge("ga"), std::nullopt);
}

TEST(Quantity, UnitAlone) {
  EXPECT_DOUBLE_EQ(parse_unit_of("in", Dim::length).size(), 0.0254);
  EXPECT_NE(parse_unit_of("kN", Dim::length).trouble.find("\"kN\" is not a unit of length"), std::string::npos);
  EXPECT_NE(parse_unit_of("yards", Dim::length).trouble.find("expected a unit of length"), std::string::npos);
}

} // namespace
} // namespace bedbow
