#include "mesh/piece/material.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

TEST(Material, TableIsSortedUniqueAndSourced) {
  const auto all = builtin_materials();
  ASSERT_GE(all.size(), 20u);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Material& m = all[i];
    EXPECT_TRUE(i == 0 || all[i - 1].name < m.name) << m.name;
    EXPECT_FALSE(m.source.empty()) << m.name;
    EXPECT_GT(m.E, 0) << m.name;
    EXPECT_GT(m.G, 0) << m.name;
    EXPECT_GT(m.density, 300) << m.name;
    EXPECT_LT(m.density, 8000) << m.name;
    EXPECT_GE(m.tensile, m.yield) << m.name;
    EXPECT_EQ(m.K.has_value(), m.n.has_value()) << m.name;
  }
}

TEST(Material, FoundByExactDesignation) {
  for (const char* name :
       {"S235JR",        "S275JR",       "S355JR",      "DC01",         "DX51D+Z",          "1.4301", "304",
        "5052-H32",      "5754-H22",     "6061-T6",     "AISI 1018 CD", "1100-O",           "6061-O", "5052-O",
        "sugar maple",   "yellow birch", "Douglas-fir", "white oak",    "northern red oak", "beech",  "birch plywood",
        "bolt steel 8.8"}) {
    const Material* m = find_material(name);
    ASSERT_NE(m, nullptr) << name;
    EXPECT_EQ(m->name, name);
  }
  EXPECT_EQ(find_material("s275jr"), nullptr);
  EXPECT_EQ(find_material("S275"), nullptr);
  EXPECT_EQ(find_material(""), nullptr);
  EXPECT_EQ(find_material("zzz"), nullptr);
}

// EN 10025-2 Table 7: ReH by nominal thickness; the limits belong to the thinner class.
TEST(Material, StructuralSteelYieldsEarlierWhenThick) {
  const Material& s275 = *find_material("S275JR");
  EXPECT_EQ(yield_for_thickness(s275, 0.003), 275e6);
  EXPECT_EQ(yield_for_thickness(s275, 0.016), 275e6);
  EXPECT_EQ(yield_for_thickness(s275, 0.020), 265e6);
  EXPECT_EQ(yield_for_thickness(s275, 0.040), 265e6);
  EXPECT_EQ(yield_for_thickness(s275, 0.050), 255e6);
  const Material& s355 = *find_material("S355JR");
  EXPECT_EQ(yield_for_thickness(s355, 0.030), 345e6);
  EXPECT_EQ(yield_for_thickness(s355, 0.060), 335e6);
  EXPECT_EQ(yield_for_thickness(*find_material("DC01"), 0.1), 280e6);
}

TEST(Material, MetalsAreIsotropic) {
  for (const Material& m : builtin_materials())
    EXPECT_TRUE(m.yield == 0 || std::abs(m.G * 2 * (1 + m.nu) / m.E - 1) < 1e-12) << m.name;
}

} // namespace bedbow
