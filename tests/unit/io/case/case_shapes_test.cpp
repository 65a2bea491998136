#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

namespace bedbow {
namespace {

std::string member(const std::string& shape) {
  return R"([[member]]
name = "rod"
from = ["0 mm", "0 mm", "0 mm"]
to = ["0 mm", "0 mm", "500 mm"]
material = "S235JR"
)" + shape +
         R"(
[[hold]]
at = ["0 mm", "0 mm", "0 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
)";
}

Shape shape(const std::string& keys) {
  return test::machine(member(keys)).members.at(0).shape;
}

TEST(CaseShapes, SizesWithTheirUnits) {
  const Shape channel = shape(R"(shape = "channel"
width = "40 mm"
height = "4 in"
wall = "0.5 cm"
turn = "90 deg")");
  EXPECT_EQ(channel.kind, "channel");
  EXPECT_DOUBLE_EQ(channel.width, 0.04);
  EXPECT_DOUBLE_EQ(channel.height, 0.1016);
  EXPECT_DOUBLE_EQ(channel.wall, 0.005);
  EXPECT_DOUBLE_EQ(channel.turn, std::numbers::pi / 2);
  EXPECT_DOUBLE_EQ(shape(R"(shape = "round"
diameter = "1/2 in")")
                       .diameter,
                   0.0127);
}

TEST(CaseShapes, GivenProperties) {
  const Shape s = shape(R"(shape = "section"
A = "12 cm^2"
Iyy = "36 cm^4"
Izz = "4 in^4"
J = "9 cm^4"
Az = "1000 mm^2"
shear_centre_y = "-3 mm")");
  EXPECT_EQ(s.kind, "section");
  EXPECT_DOUBLE_EQ(s.given.at("A"), 12e-4);
  EXPECT_DOUBLE_EQ(s.given.at("Iyy"), 36e-8);
  EXPECT_NEAR(s.given.at("Izz"), 4 * 0.0254 * 0.0254 * 0.0254 * 0.0254, 1e-20);
  EXPECT_DOUBLE_EQ(s.given.at("J"), 9e-8);
  EXPECT_DOUBLE_EQ(s.given.at("Az"), 1e-3);
  EXPECT_DOUBLE_EQ(s.given.at("shear_centre_y"), -0.003);
  EXPECT_FALSE(s.given.contains("Ay"));
}

TEST(CaseShapes, WrongValues) {
  test::expect_error("", member(R"(shape = "square"
width = "40 mm")"),
                     6, "member.rod.shape", {"unknown section shape \"square\"", "rectangle"});
  test::expect_error("", member(R"(shape = "pipe"
diameter = "40 mm")"),
                     1, "member.rod.wall", {"missing key \"wall\"", "needs diameter, wall"});
  test::expect_error("", member(R"(shape = "pipe"
diameter = "40 mm"
wall = "21 mm")"),
                     8, "member.rod.wall", {"wall"});
  test::expect_error("", member(R"(shape = "round"
diameter = "0 mm")"),
                     7, "member.rod.diameter", {"must be greater than zero"});
}

TEST(CaseShapes, UnusedSizeIsAWarning) {
  const Case c = test::read(member(R"(shape = "round"
diameter = "40 mm"
wall = "3 mm")"));
  const auto it = std::ranges::find(c.warnings, "member.rod.wall", &Problem::key);
  ASSERT_NE(it, c.warnings.end());
  EXPECT_NE(it->text.find("does not use it; its sizes are diameter"), std::string::npos) << it->text;
  EXPECT_EQ(it->pos.line, 8);
}

} // namespace
} // namespace bedbow
