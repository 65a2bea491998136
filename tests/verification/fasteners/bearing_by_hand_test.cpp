// What bears the load against figures worked on paper from the equations named, each number to six digits.
#include "mesh/piece/fastener.h"
#include "solver/strength/nut.h"
#include "solver/strength/pin.h"
#include "solver/strength/screw.h"
#include "solver/strength/stud.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

namespace bedbow::verification {

namespace {
constexpr double six_digits = 2e-6; // the hand figures end there
}

// 20 mm pin, 30 mm in its hole, 3000 N. d l = 600 mm^2; A = 314.1593 mm^2; W = pi d^3/32 = 785.3982 mm^3.
// Overhung M = 3000 x 30/2 = 45 N m. Held on both sides with 2 mm of gap: M = 3000/8 (2 x 30 + 4 x 2) = 25.5 N m.
TEST(BearingByHand, HingePin) {
  Pin pin;
  pin.diameter = 0.020;
  pin.bearing_length = 0.030;
  pin.pin = *find_material("bolt steel 12.9");
  pin.hole = *find_material("S275JR");
  const PinResult r = check_pin(pin, 3000);
  const char* solid = "solid round section: 4 V/(3 A), M/W";
  const char* en = "EN 1993-1-8 Fig. 3.11: M = F/8 (b + 4 c + 2 a), scribd.com/document/406810866";
  record("", "F/(d l)", "pressure in the hole", r.pressure * 1e-6, 5, six_digits, "MPa");
  record("", solid, "shear of the pin, overhung", r.shear * 1e-6, 12.7324, six_digits, "MPa");
  record("", solid, "bending of the pin, overhung", r.bending * 1e-6, 57.2958, six_digits, "MPa");
  pin.shear_planes = 2;
  pin.gap = 0.002;
  record("", solid, "shear of the pin, held on both sides", check_pin(pin, 3000).shear * 1e-6, 6.36620, six_digits,
         "MPa");
  record("", en, "bending of the pin, held on both sides", check_pin(pin, 3000).bending * 1e-6, 32.4676, six_digits,
         "MPa");
  // The hole is squeezed oval where the pressure passes 0.6 x 275 = 165 MPa, which is 99 kN on 600 mm^2.
  pin.swings = false;
  record("", "EN 1993-1-8 Table 3.10, replaceable pin: 0.6 yield, scribd.com/document/557448113",
         "use of the hole at 99 kN", check_pin(pin, 99000).checks.front().utilisation(), 1, six_digits);
}

// 18 mm stud, 140 mm free, E = 205 GPa: I = 5152.997 mm^4, W = 572.5553 mm^3, A = 254.4690 mm^2. Ends 0.5 mm apart:
// M = 6 E I x 0.5/140^2 = 161.6884 N m, with a spherical seat half of it. Turned by 0.01: M = 4 E I x 0.01/140 =
// 301.8184 N m. 10 kN with 50 N m: 39.2975 + 87.3278 MPa.
TEST(BearingByHand, StudThatBends) {
  const Stud stud{0.018, 0.140, 205e9};
  const char* slopes = "slope-deflection equations of a prismatic beam";
  record("", slopes, "moment from 0.5 mm sideways", stud_moment(stud, 0.0005, 0), 161.6884, six_digits, "N m");
  record("", slopes, "the same on a spherical seat", stud_moment(stud, 0.0005, 0, true), 80.8442, six_digits, "N m");
  record("", slopes, "moment from a tilt of 0.01", stud_moment(stud, 0, 0.01), 301.8184, six_digits, "N m");
  record("", "N/A + M/W", "stress from 10 kN and 50 N m", stud_stress(stud, 10000, 0, 50) * 1e-6, 126.6253, six_digits,
         "MPa");
}

// M20 on a plain washer 37 x 3 over a hole of 22 mm: it presses out to 30 + 1.6 x 3 = 34.8 mm, on 571.016 mm^2.
TEST(BearingByHand, NutOnItsWasher) {
  record("", "VDI 2230-1, R10: flats and 1.6 washer thicknesses, github.com/h18340637145/vdi2230, R10.cs",
         "pressure under an M20 nut at 20 kN", seat_pressure_of(nut_seat(*find_thread("M20"), true), 20000) * 1e-6,
         35.0253, six_digits, "MPa");
}

// A bar lifted 30 mm from its heel by 1 kN, the screw at 12 mm: 2.5 kN. M8 in 8 mm of S275JR: 6.4 kN on 64 mm^2. M8
// 8.8: 0.6 x 800 x 36.61/1.25 = 14.058 kN in shear, tension the lesser of 0.9 x 800 x 36.61/1.25 = 21.087 kN and proof.
TEST(BearingByHand, ScrewThatIsPriedAndSheared) {
  Screw s;
  s.thread = *find_thread("M8");
  s.grade = *find_grade("8.8", 0.008);
  s.plate_thickness = 0.008;
  s.plate = *find_material("S275JR");
  const char* en = "EN 1993-1-8 Table 3.4 as in orangebook.arcelormittal.com, notes 11.1; stress area of ISO 898-1";
  record("", "lever about the heel", "tension from prying", prying_tension(1000, 0.030, 0.012), 2500, six_digits, "N");
  const auto checks = check_screw(s, 6400, 10000);
  record("", "V/(d t)", "bearing in the thinner bar", checks.back().actual * 1e-6, 100, six_digits, "MPa");
  // The stress area is printed with four digits.
  record("I4", en, "use in shear, 6.4 kN", checks.at(0).utilisation(), 6.4 / 14.058, 2e-4);
  record("I4", en, "use in shear and tension together, 6.4 and 10 kN", checks.at(2).utilisation(),
         6.4 / 14.058 + 10 / (1.4 * 21.087), 2e-4);
}

} // namespace bedbow::verification
