#include "solver/strength/nut.h"

#include <gtest/gtest.h>

#include <numbers>

namespace bedbow {

// By hand, M20 with plain washer 37 x 3: flats 30 + 1.6 x 3 = 34.8 mm, hole 22 mm: 571.0 mm^2.
TEST(Nut, SeatByHand) {
  const Thread m20 = *find_thread("M20");
  const Seat washer = nut_seat(m20, true);
  EXPECT_NEAR(washer.outer, 0.0348, 1e-9);
  EXPECT_NEAR(seat_pressure_of(washer, 20000), 20000 / 571.01e-6, 2e3);
  EXPECT_NEAR(nut_seat(m20, false).outer, 0.030, 1e-9);
  EXPECT_NEAR(nut_seat(m20, 0.060, 0.012).outer, 0.0492, 1e-9); // a thick washer spreads further
  EXPECT_NEAR(nut_seat(m20, 0.032, 0.012).outer, 0.032, 1e-9);  // but never beyond its rim
  EXPECT_THROW(seat_pressure_of({0.020, 0.022}, 1), std::invalid_argument);
}

TEST(Nut, SeatOnTimberIsTheWeakOne) {
  const Seat seat = nut_seat(*find_thread("M20"), true);
  const Check steel = check_seat(seat, 10000, *find_material("S275JR"));
  const Check maple = check_seat(seat, 10000, *find_material("sugar maple"));
  EXPECT_LT(steel.utilisation(), 0.1);
  EXPECT_GT(maple.utilisation(), 1);
  EXPECT_EQ(check_seat(seat, 1, *find_material("S275JR"), 5e6).allowed.value, 5e6);
}

// An M10 screw of 800 MPa in steel of 410 MPa: 27.489 mm^2 of nut thread per mm (I23) at 0.6 x 410 MPa against
// 57.99 mm^2 x 800 MPa (I4).
TEST(Nut, EngagementByHand) {
  const Thread m10 = *find_thread("M10");
  const double bare = 57.99 * 800 / (27.489 * 0.6 * 410); // mm
  EXPECT_NEAR(engagement_needed(m10, 800e6, 410e6, 1) * 1e3, bare, 2e-3);
  EXPECT_NEAR(engagement_needed(m10, 800e6, 410e6) / engagement_needed(m10, 800e6, 410e6, 1), thread_reserve, 1e-12);
  const ThreadEngagement e{m10, engagement_needed(m10, 800e6, 410e6), 800e6, 410e6};
  EXPECT_NEAR(check_thread_shear(e, stress_area(m10) * 800e6).utilisation(), 1, 1e-12);
}

// In a nut much stronger than the screw it is the screw's threads that strip.
TEST(Nut, WeakerThreadDecides) {
  const Thread m10 = *find_thread("M10");
  const double hard = engagement_needed(m10, 800e6, 5000e6, 1), harder = engagement_needed(m10, 800e6, 9000e6, 1);
  EXPECT_EQ(hard, harder);
}

} // namespace bedbow
