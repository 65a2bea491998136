#include "solver/strength/pin.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {
Pin hinge() {
  Pin p;
  p.diameter = 0.016;
  p.bearing_length = 0.016;
  p.pin = *find_material("bolt steel 8.8");
  p.hole = *find_material("S275JR");
  return p;
}
} // namespace

// By hand: 2 kN on 16 x 16 mm is 7.8125 MPa; the circle of 201.06 mm^2 shears at 4/3 x 9.947 MPa; overhung by half the
// length, 2 kN x 8 mm = 16 N m on 402.12 mm^3 bends it with 39.79 MPa.
TEST(Pin, StressesByHand) {
  const PinResult r = check_pin(hinge(), 2000);
  EXPECT_NEAR(r.pressure, 7.8125e6, 1);
  EXPECT_NEAR(r.shear, 4.0 / 3 * 9.9472e6, 1e3);
  EXPECT_NEAR(r.bending, 39.789e6, 1e4);
  Pin both = hinge();
  both.shear_planes = 2;
  EXPECT_NEAR(check_pin(both, 2000).shear, r.shear / 2, 1);
  EXPECT_NEAR(check_pin(both, 2000).bending, r.bending / 2, 1); // F l/4 instead of F l/2
  both.gap = 0.002;
  EXPECT_NEAR(check_pin(both, 2000).bending, (r.bending / 2) * (1 + 2 * 2.0 / 16), 1);
}

TEST(Pin, FateOfTheHole) {
  EXPECT_EQ(check_pin(hinge(), 1000).fate, HoleFate::keeps);        // 3.9 MPa
  EXPECT_EQ(check_pin(hinge(), 2000).fate, HoleFate::wears_oval);   // 7.8 MPa, bears 5 while swinging
  EXPECT_EQ(check_pin(hinge(), 50000).fate, HoleFate::yields_oval); // 195 MPa, 0.6 x 275 without yielding
  Pin still = hinge();
  still.swings = false;
  EXPECT_EQ(check_pin(still, 2000).fate, HoleFate::keeps);
  Pin bushed = hinge();
  bushed.allowed_pressure = 20e6;
  EXPECT_EQ(check_pin(bushed, 2000).fate, HoleFate::keeps);
  EXPECT_EQ(check_pin(bushed, 2000).checks.front().allowed.source, "case");
}

TEST(Pin, SaysWhatBecomesOfTheHole) {
  const Pin p = hinge();
  EXPECT_EQ(describe(p, check_pin(p, 2000)),
            "at 7.81 MPa the hole will wear oval: a steel pin in steel withstands 5 MPa while it swings");
  EXPECT_EQ(describe(p, check_pin(p, 1000)), "at 3.91 MPa the hole keeps its shape");
  EXPECT_EQ(describe(p, check_pin(p, 50000)),
            "at 195 MPa the hole is squeezed oval at once: a steel pin in steel withstands 165 MPa without yielding");
}

TEST(Pin, ShearAgainstVonMises) {
  const PinResult r = check_pin(hinge(), 2000);
  EXPECT_NEAR(r.checks.at(1).allowed.value, 640e6 / std::sqrt(3.0), 1);
  EXPECT_NEAR(r.checks.at(2).utilisation(), r.bending / 640e6, 1e-12);
}

// A pin fixed in its seat by pressure alone: whatever the overhang, a pressure linear along the seat with that at its
// mouth balances the force and its moment. The seat used to be unchecked, although it bears at least seven times F/(d
// l).
TEST(Pin, PressureInTheSeatBalancesTheForce) {
  const double F = 2000, d = 0.016, l = 0.020;
  for (const double e : {0.0, 0.008, 0.010, 0.050}) {
    const double mouth = seat_mouth_pressure(F, d, l, e);
    const double end = 2 * F / (d * l) - mouth; // the mean is F/(d l)
    double force = 0, moment = 0;               // about the mouth, by Simpson's rule, exact for a square
    for (const auto& [at, weight] : {std::pair{0.0, 1.0 / 6}, std::pair{0.5, 4.0 / 6}, std::pair{1.0, 1.0 / 6}}) {
      const double line = d * (mouth + (end - mouth) * at);
      force += weight * l * line;
      moment += weight * l * line * at * l;
    }
    EXPECT_NEAR(force, F, 1e-9 * F);
    EXPECT_NEAR(moment, -F * e, 1e-9 * F * l); // turned against the force outside
  }
}

// 2 kN in the middle of 16 mm of bearing, 1 mm clear of the seat: e = 9 mm, (4 + 6 x 9/16) 7.8125 = 57.62 MPa at the
// mouth. The pin does not turn there: 0.6 x 275 MPa.
TEST(Pin, SeatOfAnOverhungPinIsChecked) {
  Pin p = hinge();
  p.gap = 0.001;
  p.seat = p.hole;
  const PinResult r = check_pin(p, 2000);
  EXPECT_NEAR(r.seat, 57.617e6, 1e3);
  ASSERT_EQ(r.checks.size(), 4U);
  EXPECT_EQ(r.checks[3].what, "pin's seat");
  EXPECT_NEAR(r.checks[3].allowed.value, 0.6 * 275e6, 1);
  p.allowed_seat = 100e6;
  EXPECT_EQ(check_pin(p, 2000).checks[3].allowed.source, "case");
  p.shear_planes = 2;
  EXPECT_EQ(check_pin(p, 2000).checks.size(), 3U) << "held on both sides it does not lever";
}

TEST(Pin, MisuseIsNamed) {
  Pin p = hinge();
  p.diameter = 0;
  EXPECT_THROW(check_pin(p, 1), std::invalid_argument);
  p = hinge();
  p.bearing_length = std::nan("");
  EXPECT_THROW(check_pin(p, 1), std::invalid_argument);
  p = hinge();
  p.shear_planes = 3;
  EXPECT_THROW(check_pin(p, 1), std::invalid_argument);
}

} // namespace bedbow
