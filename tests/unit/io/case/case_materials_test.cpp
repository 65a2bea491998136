#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <algorithm>

namespace bedbow {
namespace {

using test::expect_error;

std::string of_own(const std::string& keys) {
  return "[material.mine]\n" + keys + R"(
[bed]
length = "900 mm"
material = "mine"
[[bed.bar]]
name = "web"
shape = "round"
diameter = "30 mm"
at = ["15 mm", "-15 mm"]
[[support]]
bar = "bed.web"
x = "0 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
)";
}

TEST(CaseMaterials, EveryKey) {
  const Machine m = test::machine(of_own(R"(E = "30 Msi"
nu = 0.29
G = "79 GPa"
density = "7850 kg/m^3"
yield = "40 ksi"
tensile = "430 N/mm^2"
K = "520 MPa"
n = 0.23
gauge = "stainless")"));
  ASSERT_EQ(m.materials.size(), 1U);
  const Material& mine = m.materials[0];
  constexpr double ksi = 0.45359237 * 9.80665 * 1e3 / (0.0254 * 0.0254);
  EXPECT_EQ(mine.name, "mine");
  EXPECT_EQ(mine.source, "case");
  EXPECT_NEAR(mine.E, 30e3 * ksi, 1);
  EXPECT_DOUBLE_EQ(mine.nu, 0.29);
  EXPECT_DOUBLE_EQ(mine.G, 79e9);
  EXPECT_DOUBLE_EQ(mine.density, 7850);
  EXPECT_NEAR(mine.yield, 40 * ksi, 1e-6);
  EXPECT_DOUBLE_EQ(mine.tensile, 430e6);
  EXPECT_DOUBLE_EQ(mine.K.value(), 520e6);
  EXPECT_DOUBLE_EQ(mine.n.value(), 0.23);
  EXPECT_EQ(mine.gauge, &gauge_tables().get("stainless"));
}

TEST(CaseMaterials, Defaults) {
  const Material mine = test::machine(of_own(R"(E = "210 GPa"
nu = 0.25)"))
                            .materials.at(0);
  EXPECT_DOUBLE_EQ(mine.G, 84e9) << "E / (2 (1 + nu))";
  EXPECT_EQ(mine.density, 0);
  EXPECT_EQ(mine.yield, 0);
  EXPECT_FALSE(mine.K || mine.n);
  EXPECT_EQ(mine.gauge, nullptr);
  const Case c = test::read(of_own(R"(E = "210 GPa"
G = "79 GPa")"));
  EXPECT_DOUBLE_EQ(c.machine.materials.at(0).nu, 0.3);
  EXPECT_TRUE(
      std::ranges::any_of(c.assumptions, [](const std::string& a) { return a.starts_with("material.mine.nu: 0.3"); }));
}

TEST(CaseMaterials, OwnOverrideBuiltIn) {
  std::string text = of_own(R"(E = "100 GPa"
nu = 0.25)");
  for (std::size_t at = text.find("mine"); at != std::string::npos; at = text.find("mine")) text.replace(at, 4, "DC01");
  EXPECT_DOUBLE_EQ(test::machine(text).materials.at(0).E, 100e9);
}

TEST(CaseMaterials, WrongValues) {
  expect_error("", of_own(R"(E = "210"
nu = 0.3)"),
               2, "material.mine.E", {"\"210\" has no unit", "expected a stress"});
  expect_error("", of_own(R"(E = "210 GPa"
nu = 0.5)"),
               3, "material.mine.nu", {"not between -0.99 and 0.499"});
  expect_error("", of_own(R"(E = "210 GPa")"), 1, "material.mine.nu", {"missing key \"nu\"", "shear modulus G"});
  expect_error("", of_own(R"(E = "210 GPa"
nu = 0.3
K = "500 MPa")"),
               1, "material.mine.n", {"hardening needs both K and n"});
  expect_error("", of_own(R"(E = "210 GPa"
nu = 0.3
gauge = "brass")"),
               4, "material.mine.gauge", {"is not one of steel, galvanised, stainless, aluminium"});
}

TEST(CaseMaterials, UnknownNameSuggestsNearest) {
  expect_error("", R"([bed]
length = "900 mm"
material = "S275JQ"
)",
               3, "bed.material", {"there is no material \"S275JQ\"", "nearest is \"S275JR\""});
}

// An unused material is checked, too.
TEST(CaseMaterials, UnusedAreChecked) {
  expect_error(test::bench(), R"([material.spare]
E = "210 GPa"
)",
               1, "material.spare.nu", {"missing key \"nu\""});
}

} // namespace
} // namespace bedbow
