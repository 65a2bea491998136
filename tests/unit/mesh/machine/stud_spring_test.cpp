#include "mesh/machine/stud_spring.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

Post m20() {
  Post p;
  p.thread = "M20";
  p.diameter = 0.020;
  p.free_length = 0.120;
  return p;
}

// By hand, M20 with a pitch of 2.5 mm: A_s = 244.79, A_N = 314.16, A_d3 = 225.19 mm^2 (ISO 724, ISO 898-1). Free length
// 120/244.79 = 0.49021; each nut (VDI 2230) 0.4 d/A_N + 0.5 d/A_d3 = 8/314.16 + 10/225.19 = 0.06987 per mm. Posts used
// to stretch on their free length alone, 29 % too stiff here.
TEST(StudSpring, StretchesWithItsNutsAndEngagedThreads) {
  EXPECT_NEAR(stud_stiffness(m20()), 205e6 / (0.49021 + 2 * 0.06987), 1e-4 * 325e6);
  Post tapped = m20();
  tapped.tapped = 0.020; // 0.33 d instead of 0.4 d in the part
  EXPECT_NEAR(stud_stiffness(tapped), 205e6 / (0.49021 + 2 * 0.06987 - 0.07 * 20 / 314.16), 1e-4 * 325e6);
}

// A plain diameter is taken whole throughout: L + 2 (0.4 + 0.5) d on 314.16 mm^2.
TEST(StudSpring, APlainDiameterIsTakenWhole) {
  Post plain = m20();
  plain.thread.clear();
  EXPECT_NEAR(stud_stiffness(plain), 205e9 * 314.159e-6 / 0.156, 1e-5 * 413e6);
  EXPECT_NEAR(stud_diameter(plain), 0.020, 1e-15);
}

// Threaded all along, it bends on the circle of its stress area, 17.65 mm, as it stretches: the nominal one is 65 % too
// stiff. A spherical seat makes it a cantilever.
TEST(StudSpring, BendsOnTheSectionThatIsThere) {
  const double I = std::numbers::pi / 64 * std::pow(17.6545e-3, 4);
  EXPECT_NEAR(stud_shear_stiffness(m20()), 12 * 205e9 * I / std::pow(0.120, 3), 1e-4 * 6.8e6);
  Post ball = m20();
  ball.nut = NutSeat::spherical;
  EXPECT_NEAR(stud_shear_stiffness(ball), stud_shear_stiffness(m20()) / 4, 1e-6);
}

} // namespace
} // namespace bedbow
