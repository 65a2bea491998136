#include "mesh/piece/si.h"
#include "solver/findings/bend_range.h"

#include <gtest/gtest.h>

namespace bedbow {
namespace {

using si::mm;

/// A step in which the apron lags the nose by the same distance everywhere [m], over a flange of 20 mm.
StepResult lagging(const std::string& name, double lag) {
  StepResult s;
  s.name = name;
  s.bend_line.x = {0.1, 0.2};
  s.bend_line.angle_deviation = {-lag / (20 * mm), -lag / (20 * mm)};
  return s;
}

// 10 deg are 0.17453 rad: over a flange of 20 mm the apron may lag by 3.4907 mm.
TEST(BendRange, EndsAtTenDegrees) {
  EXPECT_FALSE(far_from_the_bend({lagging("bend 0 deg", 3.49 * mm)}));
  const auto beyond = far_from_the_bend({lagging("bend 0 deg", 3 * mm), lagging("bend 45 deg", 3.492 * mm)});
  ASSERT_TRUE(beyond);
  EXPECT_EQ(beyond->failure, Failure::moves);
  EXPECT_EQ(beyond->step, "bend 45 deg");
  EXPECT_DOUBLE_EQ(beyond->value, 0.1746);
  EXPECT_DOUBLE_EQ(beyond->x, 0.1);
}

// Shims and the lift of cams turn apron and nose against each other before anything is bent.
TEST(BendRange, DoesNotCountWhileClamping) {
  EXPECT_FALSE(far_from_the_bend({lagging("clamp", 5 * mm)}));
}

} // namespace
} // namespace bedbow
