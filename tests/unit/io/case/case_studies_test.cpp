#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

using test::bench;
using test::expect_error;

TEST(CaseStudies, Sweep) {
  const Case c = test::read(bench(R"([sweep]
sample = 50
seed = 7
[[sweep.vary]]
key = "bed.bar.web.height"
values = ["60 mm", "80 mm", "4 in"]
[[sweep.vary]]
key = "bed.bar.web.width"
from = "10 mm"
to = "2 cm"
steps = 3
[[sweep.vary]]
keys = ["support.left.x", "support.right.x"]
rows = [["0 mm", "900 mm"], ["50 mm", "850 mm"]]
)"));
  const SweepSpec& s = c.sweep;
  EXPECT_EQ(s.sample.value(), 50U);
  EXPECT_EQ(s.seed, 7U);
  ASSERT_EQ(s.vary.size(), 3U);
  EXPECT_EQ(s.vary[0].keys, std::vector<std::string>{"bed.bar.web.height"});
  ASSERT_EQ(s.vary[0].rows.size(), 3U);
  EXPECT_EQ(s.vary[0].rows[2].at(0).text, "4 in");
  ASSERT_EQ(s.vary[1].rows.size(), 3U);
  EXPECT_EQ(s.vary[1].rows[1].at(0).text, "15 mm");
  ASSERT_EQ(s.vary[2].keys.size(), 2U);
  EXPECT_EQ(s.vary[2].rows.at(1).at(1).text, "850 mm");
  const SweepSpec none = test::read(bench()).sweep;
  EXPECT_FALSE(none.sample);
  EXPECT_EQ(none.seed, 1U);
  EXPECT_TRUE(none.vary.empty());
  const SweepSpec plain =
      test::read(bench("[[sweep.vary]]\nkey = \"bed.bar.web.height\"\nvalues = [\"60 mm\"]\n")).sweep;
  EXPECT_FALSE(plain.sample);
  EXPECT_EQ(plain.seed, 1U);
}

TEST(CaseStudies, Stock) {
  const Case c = test::read(bench(R"([[stock]]
name = "flat 80 x 16"
shape = "rectangle"
sizes = ["80 mm", "16 mm"]
material = "S235JR"
price = 14.2
bar_length = "20 ft"
[[stock]]
name = "pipe"
shape = "pipe"
diameter = "2 in"
wall = "3 mm"
material = "S275JR"
price_per_kg = 1.9
)"));
  ASSERT_EQ(c.stock.size(), 2U);
  const StockItem& flat = c.stock[0];
  EXPECT_EQ(flat.name, "flat 80 x 16");
  EXPECT_DOUBLE_EQ(flat.shape.width, 0.08);
  EXPECT_DOUBLE_EQ(flat.shape.height, 0.016);
  EXPECT_EQ(flat.material.name, "S235JR");
  EXPECT_DOUBLE_EQ(flat.price_per_metre.value(), 14.2);
  EXPECT_FALSE(flat.price_per_kg);
  EXPECT_NEAR(flat.bar_length.value(), 6.096, 1e-12);
  EXPECT_DOUBLE_EQ(c.stock[1].shape.diameter, 0.0508);
  EXPECT_DOUBLE_EQ(c.stock[1].price_per_kg.value(), 1.9);
  EXPECT_EQ(c.machine.materials.size(), 1U) << "stock is not part of the machine";
}

TEST(CaseStudies, Fit) {
  const Case c = test::read(bench(R"([fit]
[[fit.unknown]]
key = "support.left.stiffness"
from = "1 kN/mm"
to = "1000 kN/mm"
[[fit.unknown]]
keys = ["support.left.y", "support.right.y"]
)"));
  ASSERT_EQ(c.fit.size(), 2U);
  EXPECT_EQ(c.fit[0].keys, std::vector<std::string>{"support.left.stiffness"});
  ASSERT_TRUE(c.fit[0].from && c.fit[0].to);
  EXPECT_EQ(c.fit[0].to->text, "1000 kN/mm");
  EXPECT_EQ(c.fit[1].keys.size(), 2U);
  EXPECT_FALSE(c.fit[1].from || c.fit[1].to);
}

TEST(CaseStudies, WrongValues) {
  expect_error(bench(), R"([[sweep.vary]]
key = "bed.bar.web.hight"
values = ["60 mm"]
)",
               2, "sweep.vary.1.key", {"there is no key \"hight\"", "nearest is \"height\""});
  expect_error(bench(), R"([[sweep.vary]]
key = "bed.bar.flat.height"
values = ["60 mm"]
)",
               2, "sweep.vary.1.key", {"the case has no table for \"bed.bar.flat.height\""});
  expect_error(bench(), R"([[sweep.vary]]
keys = ["support.left.x", "support.right.x"]
rows = [["0 mm"]]
)",
               3, "sweep.vary.1.rows", {"not a list of 2 values"});
  expect_error(bench(), R"([[sweep.vary]]
key = "bed.bar.web.height"
from = "60 mm"
to = "80 mm"
)",
               1, "sweep.vary.1.steps", {"missing key \"steps\""});
  expect_error(bench(), R"([[stock]]
name = "s"
shape = "pipe"
sizes = ["80 mm"]
material = "S235JR"
)",
               4, "stock.s.sizes", {"\"pipe\" needs diameter, wall"});
  expect_error(bench(), R"([fit]
[[fit.unknown]]
key = "support.middle.stiffness"
)",
               3, "fit.unknown.1.key", {"the case has no table"});
}

} // namespace
} // namespace bedbow
