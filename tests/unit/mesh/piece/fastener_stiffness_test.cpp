#include "mesh/piece/fastener_stiffness.h"

#include <gtest/gtest.h>

namespace bedbow {

namespace {
ShearJoint steel(double t1, double t2, double d) {
  return {t1, 210e9, t2, 210e9, d, 210e9, 1};
}
} // namespace

TEST(FastenerStiffness, PlatesMayBeSwapped) {
  EXPECT_DOUBLE_EQ(huth_flexibility(steel(0.02, 0.01, 0.008)), huth_flexibility(steel(0.01, 0.02, 0.008)));
  EXPECT_DOUBLE_EQ(swift_flexibility(steel(0.02, 0.01, 0.008)), swift_flexibility(steel(0.01, 0.02, 0.008)));
}

// Huth's formula has no length but the ratio t/d: twice the size, half the flexibility.
TEST(FastenerStiffness, ScalesWithSize) {
  const double small = huth_flexibility(steel(0.01, 0.01, 0.008)), large = huth_flexibility(steel(0.02, 0.02, 0.016));
  EXPECT_NEAR(small / large, 2, 1e-12);
  EXPECT_NEAR(grumman_flexibility(steel(0.01, 0.01, 0.008)) / grumman_flexibility(steel(0.02, 0.02, 0.016)), 2, 1e-12);
}

TEST(FastenerStiffness, DoubleShearIsStiffer) {
  ShearJoint joint = steel(0.02, 0.01, 0.008);
  const double single = huth_flexibility(joint);
  joint.planes = 2;
  EXPECT_LT(huth_flexibility(joint), single / 2);
}

TEST(FastenerStiffness, CompositeAndRivetedDifferByTheirConstants) {
  const ShearJoint joint = steel(0.01, 0.01, 0.01); // (t1 + t2)/2d = 1: the exponent drops out
  const double bolted = huth_flexibility(joint);
  EXPECT_NEAR(huth_flexibility(joint, FastenerKind::bolted_composite) / bolted, 4.2 / 3, 1e-12);
  EXPECT_NEAR(huth_flexibility(joint, FastenerKind::riveted_metal) / bolted, 2.2 / 3, 1e-12);
}

TEST(FastenerStiffness, MisuseIsNamed) {
  ShearJoint joint = steel(0.01, 0.01, 0.01);
  joint.planes = 3;
  EXPECT_THROW(huth_flexibility(joint), std::invalid_argument);
  joint = steel(0, 0.01, 0.01);
  EXPECT_THROW(swift_flexibility(joint), std::invalid_argument);
  EXPECT_THROW(grumman_flexibility(joint), std::invalid_argument);
  TensionBolt bolt;
  bolt.thread = *find_thread("M10");
  EXPECT_THROW(bolt_resilience(bolt), std::invalid_argument); // nothing clamped
}

} // namespace bedbow
