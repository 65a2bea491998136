#include "mesh/piece/fastener.h"

#include <gtest/gtest.h>

namespace bedbow {

TEST(Grade, DependsOnDiameterWhereTheStandardSaysSo) {
  EXPECT_EQ(find_grade("8.8", 0.016)->proof, 580e6);
  EXPECT_EQ(find_grade("8.8", 0.018)->proof, 600e6);
  EXPECT_EQ(find_grade("8.8", 0.63 * 0.0254)->proof, 600e6); // 16.002 mm is above 16 mm
  EXPECT_FALSE(find_grade("9.8", 0.020));
  EXPECT_FALSE(find_grade("8.9", 0.010));
  EXPECT_FALSE(find_grade("", 0.010));
}

TEST(Grade, ProofBelowYieldBelowTensile) {
  for (const char* name : {"4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9", "SAE 2", "SAE 5", "SAE 8",
                           "A574", "A2-70", "A4-80"}) {
    const auto g = find_grade(name, 0.010);
    ASSERT_TRUE(g) << name;
    EXPECT_LE(g->proof, g->yield) << name;
    EXPECT_LT(g->yield, g->tensile) << name;
    EXPECT_FALSE(g->source.empty());
    EXPECT_NE((", " + grade_names() + ",").find(", " + std::string(name) + ","), std::string::npos);
  }
}

} // namespace bedbow
