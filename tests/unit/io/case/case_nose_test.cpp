#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace bedbow {
namespace {

using test::expect_error;

/// The folder with another nose, followed by more lines.
std::string with_nose(const std::string& nose) {
  std::string text = test::folder();
  const std::string plain = "nose = { land = \"15 mm\" }";
  return text.replace(text.find(plain), plain.size(), nose);
}

TEST(CaseNose, EveryKey) {
  const Nose nose =
      test::machine(with_nose(R"(nose = { bar = "flat", setback = "3 mm", radius = "1/16 in", land = "2 cm" })")).nose;
  EXPECT_EQ(nose.bar, 0);
  EXPECT_DOUBLE_EQ(nose.setback, 0.003);
  EXPECT_DOUBLE_EQ(nose.radius, 0.0254 / 16);
  EXPECT_DOUBLE_EQ(nose.land, 0.02);
}

TEST(CaseNose, SharpEdgeStandsBackByThicknessAndRadius) {
  const Machine m = test::machine(test::folder());
  EXPECT_DOUBLE_EQ(m.nose.setback, 0.0025); // 1 + 1.5 mm
  EXPECT_EQ(m.nose.radius, 0);
  EXPECT_EQ(m.nose.bar, 0);
  EXPECT_FALSE(m.fingers);
}

TEST(CaseNose, FingersOfOneWidth) {
  const Machine m = test::machine(with_nose(R"(nose = { land = "15 mm" }
fingers = { width = "40 mm", count = 3, start = "100 mm", gap = "0.5 mm", reach = "1 in", thickness = "12 mm", material = "bolt steel 8.8", root_stiffness = "5 kN*m/rad" })"));
  ASSERT_TRUE(m.fingers);
  const Fingers& f = *m.fingers;
  EXPECT_EQ(f.widths, (std::vector<double>{0.04, 0.04, 0.04}));
  ASSERT_EQ(f.starts.size(), 3U);
  for (int i = 0; i < 3; ++i) EXPECT_NEAR(f.starts[static_cast<std::size_t>(i)], 0.1 + 0.0405 * i, 1e-15);
  EXPECT_DOUBLE_EQ(f.reach, 0.0254);
  EXPECT_DOUBLE_EQ(f.thickness, 0.012);
  EXPECT_EQ(m.materials.at(f.material).name, "bolt steel 8.8");
  EXPECT_DOUBLE_EQ(f.root_stiffness.value(), 5000);
}

TEST(CaseNose, FingerDefaults) {
  const Machine m = test::machine(with_nose(R"(nose = { land = "15 mm" }
fingers = { widths = ["100 mm", "300 mm"], reach = "30 mm", thickness = "12 mm" })"));
  EXPECT_EQ(m.fingers->starts, (std::vector<double>{0, 0.1})) << "from the clamp's left end, without gaps";
  EXPECT_EQ(m.fingers->material, m.body(BodyKind::clamp).bars[0].material);
  EXPECT_FALSE(m.fingers->root_stiffness);
}

TEST(CaseNose, WrongValues) {
  // The nose's line in the folder.
  const std::string head = test::folder().substr(0, test::folder().find("nose ="));
  const std::string tail = test::folder().substr(test::folder().find("[[clamp.bar]]"));
  expect_error(head, "nose = { land = \"15 deg\" }\n" + tail, 1, "clamp.nose.land",
               {"is an angle", "expected a length"});
  expect_error(head, "nose = { land = \"15 mm\", bar = \"flap\" }\n" + tail, 1, "clamp.nose.bar",
               {"no bar \"flap\"", "nearest is \"flat\""});
  const std::string nose = head + "nose = { land = \"15 mm\" }\n";
  expect_error(nose, "fingers = { width = \"40 mm\", reach = \"30 mm\", thickness = \"12 mm\" }\n" + tail, 1,
               "clamp.fingers.count", {"both `width` and `count`"});
  expect_error(
      nose, "fingers = { widths = [\"40 mm\"], width = \"40 mm\", reach = \"30 mm\", thickness = \"12 mm\" }\n" + tail,
      1, "clamp.fingers.width", {"give either `widths`, or `width` and `count`"});
  expect_error(
      nose,
      "fingers = { widths = [\"40 mm\"], starts = [\"0 mm\", \"50 mm\"], reach = \"30 mm\", thickness = \"12 mm\" "
      "}\n" +
          tail,
      1, "clamp.fingers.starts", {"there are 2 starts for 1 fingers"});
}

} // namespace
} // namespace bedbow
