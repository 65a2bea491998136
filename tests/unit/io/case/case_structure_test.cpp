#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

const std::string frame = R"([[member]]
name = "rod"
from = ["0 mm", "1 in", "0 mm"]
to = ["0 mm", "1 in", "500 mm"]
shape = "rectangle"
width = "20 mm"
height = "30 mm"
up = [1, 0, 0]
material = "S275JR"
releases = { from = ["ry"], to = ["ry", "rz"] }
divisions = 6
element = "beam"
[[member]]
name = "wire"
from = ["0 mm", "1 in", "0 mm"]
to = ["400 mm", "1 in", "0 mm"]
shape = "round"
diameter = "8 mm"
material = "S275JR"
tension_only = true
[[panel]]
name = "cheek"
corner = ["400 mm", "0 mm", "0 mm"]
edge_a = ["0 mm", "200 mm", "0 mm"]
edge_b = ["0 mm", "0 mm", "6 in"]
thickness = "12 mm"
material = "DC01"
divisions = [8, 6]
element = "shell4"
[[panel]]
corner = ["600 mm", "0 mm", "0 mm"]
edge_a = ["0 mm", "200 mm", "0 mm"]
edge_b = ["0 mm", "0 mm", "150 mm"]
thickness = "12 mm"
material = "DC01"
)";

TEST(CaseStructure, MemberWithEveryKey) {
  const Machine m = test::machine(frame);
  ASSERT_EQ(m.members.size(), 2U);
  const Member& rod = m.members[0];
  EXPECT_EQ(rod.name, "rod");
  EXPECT_EQ(rod.from, Eigen::Vector3d(0, 0.0254, 0));
  EXPECT_EQ(rod.to, Eigen::Vector3d(0, 0.0254, 0.5));
  EXPECT_DOUBLE_EQ(rod.shape.height, 0.03);
  EXPECT_EQ(rod.up, Eigen::Vector3d::UnitX());
  EXPECT_EQ(m.materials.at(rod.material).name, "S275JR");
  EXPECT_EQ(rod.release_from, (DofMask{false, false, false, false, true, false}));
  EXPECT_EQ(rod.release_to, (DofMask{false, false, false, false, true, true}));
  EXPECT_EQ(rod.divisions, 6);
  EXPECT_EQ(rod.element, "beam");
  EXPECT_FALSE(rod.tension_only);
  const Member& wire = m.members[1];
  EXPECT_TRUE(wire.tension_only);
  EXPECT_TRUE(std::isnan(wire.up.x()));
  EXPECT_EQ(wire.release_from, DofMask{});
  EXPECT_EQ(wire.divisions, 4);
  EXPECT_TRUE(wire.element.empty());
}

TEST(CaseStructure, Panel) {
  const Machine m = test::machine(frame);
  ASSERT_EQ(m.panels.size(), 2U);
  const Panel& cheek = m.panels[0];
  EXPECT_EQ(cheek.name, "cheek");
  EXPECT_EQ(cheek.corner, Eigen::Vector3d(0.4, 0, 0));
  EXPECT_EQ(cheek.edge_a, Eigen::Vector3d(0, 0.2, 0));
  EXPECT_NEAR(cheek.edge_b.z(), 0.1524, 1e-15);
  EXPECT_DOUBLE_EQ(cheek.thickness, 0.012);
  EXPECT_EQ(m.materials.at(cheek.material).name, "DC01");
  EXPECT_EQ(cheek.divisions, (std::array<int, 2>{8, 6}));
  EXPECT_EQ(cheek.element, "shell4");
  EXPECT_EQ(m.panels[1].divisions, (std::array<int, 2>{8, 8}));
  EXPECT_TRUE(m.panels[1].element.empty());
}

TEST(CaseStructure, WrongValues) {
  const std::string rod = R"([[member]]
name = "r"
from = ["0 mm", "0 mm", "0 mm"]
to = ["0 mm", "0 mm", "500 mm"]
shape = "round"
diameter = "8 mm"
material = "S275JR"
)";
  test::expect_error("", rod + "divisions = 0\n", 8, "member.r.divisions", {"0 is not between 1 and 10000"});
  test::expect_error("", rod + "tension_only = true\nelement = \"beam\"\n", 9, "member.r.element",
                     {"a rod without bending"});
  test::expect_error("", rod + "element = \"shell4\"\n", 8, "member.r.element", {"shell4"});
  test::expect_error("", rod + "releases = { to = [\"mx\"] }\n", 8, "member.r.releases.to",
                     {"\"mx\" is not one of x, y, z, rx, ry, rz"});
  test::expect_error("", R"([[panel]]
name = "p"
corner = ["0 mm", "0 mm"]
)",
                     3, "panel.p.corner", {"the list has 2 items; expected a list of 3"});
}

} // namespace
} // namespace bedbow
