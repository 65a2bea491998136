#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

const std::string head_of_row = R"([[screws]]
name = "row"
joins = ["bed.square", "clamp.flat"]
size = "M8"
first = "100 mm"
)";

Screws row_with(const std::string& keys) {
  return test::machine(test::folder(head_of_row + keys)).screws.at(0);
}

TEST(CaseScrews, EveryKey) {
  const Screws s = row_with(R"(class = "12.9"
pitch = "2 in"
count = 3
y = "28 mm"
shear_stiffness = "90 kN/mm"
allowed_shear = "12 kN"
allowed_tension = "20 kN"
allowed_bearing = "400 MPa"
)");
  EXPECT_EQ(s.name, "row");
  EXPECT_EQ(s.thread, "M8");
  EXPECT_DOUBLE_EQ(s.diameter, 0.008);
  EXPECT_EQ(s.grade, "12.9");
  ASSERT_EQ(s.x.size(), 3U);
  EXPECT_NEAR(s.x[2], 0.1 + 2 * 0.0508, 1e-15);
  EXPECT_DOUBLE_EQ(s.at.y(), 0.028);
  EXPECT_DOUBLE_EQ(s.shear_stiffness.value(), 90e6);
  EXPECT_DOUBLE_EQ(s.allowed_shear.value(), 12e3);
  EXPECT_DOUBLE_EQ(s.allowed_tension.value(), 20e3);
  EXPECT_DOUBLE_EQ(s.allowed_bearing.value(), 400e6);
}

// The bars end at 700 mm: 100, 250, 400, 550, 700.
TEST(CaseScrews, RowEndsAtTheBarsOrAsGiven) {
  const Screws to_the_end = row_with("pitch = \"150 mm\"\n");
  ASSERT_EQ(to_the_end.x.size(), 5U);
  EXPECT_NEAR(to_the_end.x.back(), 0.7, 1e-12);
  EXPECT_TRUE(to_the_end.grade.empty());
  EXPECT_TRUE(std::isnan(to_the_end.at.y()));
  EXPECT_FALSE(to_the_end.shear_stiffness || to_the_end.allowed_shear || to_the_end.allowed_tension);
  EXPECT_EQ(row_with("pitch = \"150 mm\"\nlast = \"540 mm\"\n").x.size(), 3U);
  const Screws between = row_with("count = 4\nlast = \"400 mm\"\n");
  ASSERT_EQ(between.x.size(), 4U);
  EXPECT_NEAR(between.x[1], 0.2, 1e-12);
  EXPECT_NEAR(between.x[3], 0.4, 1e-12);
  EXPECT_EQ(row_with("count = 1\n").x, std::vector<double>{0.1});
}

TEST(CaseScrews, WrongValues) {
  const auto expect = [](const std::string& keys, int line, const std::string& key,
                         const std::vector<std::string>& words) {
    test::expect_error(test::folder(), head_of_row + keys, line, "screws.row." + key, words);
  };
  expect("pitch = \"150 mm\"\ncount = 3\nlast = \"400 mm\"\n", 8, "last",
         {"pitch, count and last overdetermine the row"});
  expect("count = 3\n", 1, "pitch", {"missing key \"pitch\"", "`count` and `last`"});
  expect("pitch = \"50 mm\"\nlast = \"50 mm\"\n", 7, "last", {"ends before its first screw"});
  expect("pitch = \"0.01 mm\"\n", 5, "first", {"more than 10000 screws"});
  expect("pitch = \"50 mm\"\ncount = 2.5\n", 7, "count", {"expected a bare whole number"});
  expect("pitch = \"50 mm\"\nallowed_shear = \"12 MPa\"\n", 7, "allowed_shear", {"is a stress", "expected a force"});
}

} // namespace
} // namespace bedbow
