#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <numbers>

namespace bedbow {
namespace {

/// The folder with one line of its [sheet] replaced.
std::string with_line(const std::string& line, const std::string& by) {
  std::string text = test::folder();
  return text.replace(text.find(line), line.size(), by);
}

TEST(CaseSheet, EveryKey) {
  const Machine m = test::machine(
      with_line("thickness = \"1 mm\"\nwidth = \"400 mm\"\n",
                "thickness = \"0.03 in\"\nwidth = \"16 in\"\nmoment_law = \"power-law\"\nfriction = 0.2\n"));
  ASSERT_TRUE(m.sheet);
  const Sheet& s = *m.sheet;
  EXPECT_EQ(s.pos.line, 1);
  EXPECT_EQ(m.materials.at(s.material).name, "DC01");
  EXPECT_DOUBLE_EQ(s.thickness, 0.000762);
  EXPECT_DOUBLE_EQ(s.width, 0.4064);
  EXPECT_DOUBLE_EQ(s.centre, 0.35);
  EXPECT_DOUBLE_EQ(s.flange, 0.02);
  EXPECT_DOUBLE_EQ(s.inside_radius, 0.0015);
  EXPECT_DOUBLE_EQ(s.angle, std::numbers::pi / 2);
  EXPECT_DOUBLE_EQ(s.grip, 0.015);
  EXPECT_EQ(s.moment_law, "power-law");
  EXPECT_EQ(s.friction, 0.2);
  EXPECT_EQ(test::machine(test::folder()).sheet->friction, 0.15); // Gieck, steel on steel
  EXPECT_EQ(test::machine(test::folder()).sheet->moment_law, ""); // the greater of both
  EXPECT_FALSE(test::machine(test::bench()).sheet);
}

// Manufacturers' standard gauge: 20 gauge steel is 0.0359 in.
TEST(CaseSheet, ThicknessByGauge) {
  const Machine m = test::machine(with_line("thickness = \"1 mm\"", "thickness = \"20 ga\""));
  EXPECT_NEAR(m.sheet->thickness, 0.0359 * 0.0254, 0.00005 * 0.0254);
}

TEST(CaseSheet, WrongValues) {
  const auto expect = [](const std::string& line, const std::string& by, int at, const std::string& key,
                         const std::vector<std::string>& words) {
    test::expect_error("", with_line(line, by), at, key, words);
  };
  expect("thickness = \"1 mm\"", "thickness = 1", 3, "sheet.thickness", {"1 has no unit", "expected a length"});
  expect("thickness = \"1 mm\"", "thickness = \"99 ga\"", 3, "sheet.thickness", {"gauge table has no such gauge"});
  expect("flange = \"20 mm\"", "flange = \"-20 mm\"", 6, "sheet.flange", {"must be greater than zero"});
  expect("angle = \"90 deg\"", "angle = \"90 mm\"", 8, "sheet.angle", {"is a length", "expected an angle"});
  expect("grip = \"15 mm\"", "grip = \"15 mm\"\nmoment_law = \"plastic\"", 10, "sheet.moment_law",
         {"unknown moment law \"plastic\"", "rigid-plastic"});
  expect("grip = \"15 mm\"", "grip = \"15 mm\"\nfriction = -0.1", 10, "sheet.friction",
         {"-0.1 is not between 0 and 2"});
  expect("grip = \"15 mm\"\n", "", 1, "sheet.grip", {"missing key \"grip\""});
  test::expect_error(test::bench(), test::folder().substr(0, test::folder().find("[bed]")), 1, "clamp",
                     {"missing table [clamp]", "held between bed and clamp"});
}

} // namespace
} // namespace bedbow
