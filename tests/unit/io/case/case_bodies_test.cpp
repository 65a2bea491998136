#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {
namespace {

using test::expect_error;

const std::string two_bars = R"([bed]
length = "1 m"
material = "S235JR"
crown = { x = ["0.2 m", "20 in"], height = ["0.05 mm", "2 thou"] }
edge = { bar = "top" }
[[bed.bar]]
name = "web"
shape = "rectangle"
width = "20 mm"
height = "100 mm"
at = ["10 mm", "-70 mm"]
[[bed.bar]]
name = "top"
shape = "rectangle"
width = "2 in"
height = "20 mm"
turn = "0 deg"
at = ["25.4 mm", "0 mm"]
stack = "on bed.web"
model = "plate"
material = "S275JR"
start = "100 mm"
length = "0.5 m"
[[weld]]
joins = ["bed.web", "bed.top"]
[[support]]
bar = "bed.web"
x = "0 mm"
holds = ["x", "y", "z", "rx"]
)";

TEST(CaseBodies, BarWithEveryKey) {
  const Machine m = test::machine(two_bars);
  const Body& bed = m.body(BodyKind::bed);
  EXPECT_EQ(bed.kind, BodyKind::bed);
  EXPECT_DOUBLE_EQ(bed.length, 1);
  EXPECT_EQ(bed.pos.line, 1);
  ASSERT_EQ(bed.bars.size(), 2U);
  EXPECT_EQ(bed.edge_bar, 1);
  const Bar& top = bed.bars[1];
  EXPECT_EQ(top.name, "top");
  EXPECT_EQ(top.pos.line, 12);
  EXPECT_EQ(top.shape.kind, "rectangle");
  EXPECT_DOUBLE_EQ(top.shape.width, 2 * 0.0254);
  EXPECT_DOUBLE_EQ(top.shape.height, 0.02);
  EXPECT_EQ(top.model, BarModel::plate);
  EXPECT_EQ(m.materials.at(top.material).name, "S275JR");
  EXPECT_DOUBLE_EQ(top.start, 0.1);
  EXPECT_DOUBLE_EQ(top.end(), 0.6);
  ASSERT_TRUE(top.stack);
  EXPECT_EQ(top.stack->side, Stack::Side::on);
  EXPECT_EQ(top.stack->bar, (Ref{Ref::Kind::bar, BodyKind::bed, 0}));
  EXPECT_DOUBLE_EQ(top.at.x(), 0.0254);
  EXPECT_NEAR(top.at.y(), -0.070 + 0.050 + 0.010, 1e-15) << "on the web: its top and half the bar's own height";
}

TEST(CaseBodies, BarInheritsOmittedKeysFromItsBody) {
  const Machine m = test::machine(two_bars);
  const Bar& web = m.body(BodyKind::bed).bars[0];
  EXPECT_EQ(m.materials.at(web.material).name, "S235JR");
  EXPECT_EQ(web.start, 0);
  EXPECT_DOUBLE_EQ(web.length, 1);
  EXPECT_EQ(web.model, BarModel::strip);
  EXPECT_TRUE(web.element.empty());
  EXPECT_FALSE(web.stack);
  EXPECT_FALSE(m.body(BodyKind::clamp).present());
}

TEST(CaseBodies, Crown) {
  const Crown crown = test::machine(two_bars).body(BodyKind::bed).crown;
  ASSERT_EQ(crown.x.size(), 2U);
  EXPECT_DOUBLE_EQ(crown.x[0], 0.2);
  EXPECT_DOUBLE_EQ(crown.x[1], 0.508);
  EXPECT_DOUBLE_EQ(crown.height[0], 50e-6);
  EXPECT_DOUBLE_EQ(crown.height[1], 50.8e-6);
}

TEST(CaseBodies, WrongValues) {
  expect_error("", R"([bed]
length = 900
material = "S235JR"
)",
               2, "bed.length", {"900 has no unit", "expected a length", "900 mm"});
  const std::string bed = R"([bed]
length = "900 mm"
material = "S235JR"
)";
  expect_error(bed, R"(crown = { x = ["1 mm", "1 mm"], height = ["0 mm", "1 mm"] }
[[bed.bar]]
name = "web"
shape = "round"
diameter = "30 mm"
at = ["10 mm", "-50 mm"]
)",
               1, "bed.crown.x", {"from left to right"});
  expect_error(bed, R"(crown = { x = ["1 mm", "2 mm"], height = ["0 mm"] }
)",
               1, "bed.crown.height", {"1 heights for 2 places"});
  expect_error(bed, R"([[bed.bar]]
name = "web"
shape = "round"
diameter = "30 mm"
stack = "beside bed.web"
)",
               5, "bed.bar.web.stack", {"\"beside bed.web\" is not \"on\"", "as in \"on bed.web\""});
  expect_error(bed, R"([[bed.bar]]
name = "web"
shape = "round"
diameter = "30 mm"
)",
               1, "bed.bar.web.at", {"missing key \"at\"", "`stack` on another bar"});
}

} // namespace
} // namespace bedbow
