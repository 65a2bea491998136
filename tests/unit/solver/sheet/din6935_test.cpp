#include "solver/sheet/din6935.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {
constexpr double degree = std::numbers::pi / 180, mm = 1e-3;
} // namespace

TEST(Din6935, FactorIsCappedBothWays) {
  EXPECT_EQ(din6935_k(5, 1), 1);
  EXPECT_EQ(din6935_k(50, 1), 1);
  EXPECT_EQ(din6935_k(0, 1), 0);
  EXPECT_EQ(din6935_k(0.01, 1), 0);
  EXPECT_NEAR(din6935_k(4.999999, 1), 1, 6e-4); // the formula just misses the cap
}

// Flat length by plain geometry: straight parts from the legs' ends to the tangent points, plus the arc of the neutral
// line. The legs of a 90 deg bend are outside lengths, r + s longer than the straight parts.
TEST(Din6935, FlatLengthByGeometry) {
  const double r = 3 * mm, s = 2 * mm, a = 40 * mm, b = 25 * mm;
  const double arc = std::numbers::pi / 2 * (r + din6935_k(r, s) * s / 2);
  EXPECT_NEAR(flat_length(a, b, 90 * degree, r, s), a - (r + s) + b - (r + s) + arc, 1e-12);
  // 60 deg: legs to the outside apex, (r + s) tan(30 deg) beyond the tangent points.
  const double set_back = (r + s) * std::tan(30 * degree), arc_60 = 60 * degree * (r + din6935_k(r, s) * s / 2);
  EXPECT_NEAR(flat_length(a, b, 60 * degree, r, s), a + b - 2 * set_back + arc_60, 1e-12);
}

TEST(Din6935, CorrectionIsContinuousAt90AndZeroBelow15) {
  const double r = 2 * mm, s = 1.5 * mm;
  EXPECT_NEAR(din6935_correction(90 * degree - 1e-9, r, s), din6935_correction(90 * degree, r, s), 1e-10);
  EXPECT_EQ(din6935_correction(14 * degree, r, s), 0);
  EXPECT_EQ(din6935_correction(0, r, s), 0);
}

TEST(Din6935, RadiusGrowsWithThicknessAndStrength) {
  Material soft = *find_material("DC01");
  soft.tensile = 350e6;
  Material hard = soft;
  hard.tensile = 600e6;
  double last = 0;
  for (int half = 1; half <= 40; ++half) {
    const double t = half / 2.0;
    const double now = least_inside_radius(soft, t * mm).value;
    EXPECT_GE(now, last) << t;
    EXPECT_GE(least_inside_radius(hard, t * mm).value, now) << t;
    last = now;
  }
}

TEST(Din6935, OutsideTheTablesThereIsNoValueButAReason) {
  Material steel = *find_material("S355JR");
  EXPECT_EQ(least_inside_radius(steel, 25 * mm).value, 0);
  EXPECT_EQ(least_inside_radius(steel, 25 * mm).source, "DIN 6935 ends at 20 mm");
  steel.tensile = 900e6;
  EXPECT_EQ(least_inside_radius(steel, 2 * mm).source, "DIN 6935 ends at a tensile strength of 640 MPa");
  steel.tensile = 0;
  EXPECT_EQ(least_inside_radius(steel, 2 * mm).source, "DIN 6935 needs the tensile strength");
  EXPECT_EQ(least_inside_radius(*find_material("5052-H32"), 8 * mm).value, 0);
  EXPECT_EQ(least_inside_radius(*find_material("1100-O"), 1 * mm).value, 0);
  EXPECT_FALSE(least_inside_radius(*find_material("1100-O"), 1 * mm).source.empty());
}

TEST(Din6935, InchesThatMeanAStepMeetIt) {
  Material steel = *find_material("DC01");
  steel.tensile = 350e6;
  EXPECT_NEAR(least_inside_radius(steel, 0.1181102362204724 * 0.0254).value, 3 * mm, 1e-9); // 3 mm
}

TEST(Din6935, MisuseIsNamed) {
  EXPECT_THROW(din6935_k(-1, 1), std::invalid_argument);
  EXPECT_THROW(din6935_k(1, 0), std::invalid_argument);
  EXPECT_THROW(din6935_correction(-0.1, 1, 1), std::invalid_argument);
  EXPECT_THROW(din6935_correction(3.2, 1, 1), std::invalid_argument);
}

} // namespace bedbow
