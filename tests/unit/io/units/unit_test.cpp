#include "io/units/unit.h"

#include <gtest/gtest.h>

#include <numbers>
#include <set>

namespace bedbow {
namespace {

constexpr double pound_force = 0.45359237 * 9.80665; // by definition: NIST SP 811, appendix B

TEST(Unit, SizesByDefinition) {
  EXPECT_DOUBLE_EQ(parse_unit("in").size(), 0.0254);
  EXPECT_DOUBLE_EQ(parse_unit("thou").size(), 25.4e-6);
  EXPECT_DOUBLE_EQ(parse_unit("lbf").size(), pound_force);
  EXPECT_DOUBLE_EQ(parse_unit("kgf").size(), 9.80665);
  EXPECT_DOUBLE_EQ(parse_unit("oz").size(), 0.45359237 / 16);
  EXPECT_DOUBLE_EQ(parse_unit("psi").size(), pound_force / (0.0254 * 0.0254));
  EXPECT_DOUBLE_EQ(parse_unit("deg").size(), std::numbers::pi / 180);
  EXPECT_DOUBLE_EQ(parse_unit("arcmin").size(), std::numbers::pi / 180 / 60);
}

TEST(Unit, ProductsQuotientsAndPowers) {
  EXPECT_DOUBLE_EQ(parse_unit("N/mm^2").size(), 1e6);
  EXPECT_DOUBLE_EQ(parse_unit("mm2").size(), 1e-6);
  EXPECT_DOUBLE_EQ(parse_unit("kg/m^3").size(), 1);
  EXPECT_DOUBLE_EQ(parse_unit("N m").size(), 1);
  EXPECT_DOUBLE_EQ(parse_unit("lbf-in").size(), pound_force * 0.0254);
  EXPECT_DOUBLE_EQ(parse_unit("kN*m/deg").size(), 1e3 * 180 / std::numbers::pi);
  EXPECT_DOUBLE_EQ(parse_unit("N*mm^-1").size(), 1e3);
  // Only the factor behind a slash is divided by.
  EXPECT_DOUBLE_EQ(parse_unit("N/mm*m").size(), 1e3);
}

TEST(Unit, Exponents) {
  EXPECT_EQ(parse_unit("N*m/rad").exponents, (Exponents{2, 1, -2, -1}));
  EXPECT_EQ(parse_unit("kg*m/s^2").exponents, parse_unit("N").exponents);
  EXPECT_EQ(parse_unit("N/mm^2").exponents, parse_unit("psi").exponents);
  EXPECT_NE(parse_unit("N*m").exponents, parse_unit("N*m/rad").exponents);
}

/// A count of a unit as the double nearest to the decimal: 9 mm are 0.009, not 0.009000000000000001.
TEST(Unit, CountsAreRoundedOnce) {
  EXPECT_EQ(parse_unit("mm").si(9), 0.009);
  EXPECT_EQ(parse_unit("um").si(57), 57e-6);
  EXPECT_EQ(parse_unit("in").si(7), 0.1778);
}

TEST(Unit, WhatIsNone) {
  EXPECT_FALSE(parse_unit("furlong").ok());
  EXPECT_FALSE(parse_unit("N/").ok());
  EXPECT_FALSE(parse_unit("mm^x").ok());
  EXPECT_FALSE(parse_unit("").ok());
  EXPECT_NE(parse_unit("KN").trouble.find("kN"), std::string::npos) << "the right case is named";
}

TEST(Unit, NamesOnceEach) {
  std::set<std::string_view> names;
  for (const UnitAtom& a : unit_atoms()) {
    EXPECT_TRUE(names.insert(a.name).second) << a.name;
    EXPECT_TRUE(parse_unit(a.name).ok()) << a.name;
  }
}

TEST(Unit, SpellingsOfTheTrade) {
  EXPECT_EQ(plain_ascii("12 µm"), "12 um");
  EXPECT_EQ(plain_ascii("90°"), "90deg");
  EXPECT_EQ(plain_ascii("1½ in"), "1 1/2 in");
  EXPECT_EQ(plain_ascii("5 N·m"), "5 N*m");
  EXPECT_EQ(plain_ascii("mm²"), "mm^2");
  EXPECT_EQ(plain_ascii("−3 mm"), "-3 mm");
}

} // namespace
} // namespace bedbow
