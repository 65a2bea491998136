#include "solver/strength/hertz.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {
const ContactBody cylinder{0.010, 207e9, 0.3};
const ContactBody flat{.E = 207e9, .nu = 0.3};
} // namespace

TEST(Hertz, PressureAddsUpToTheForce) {
  const LineContact c = line_contact(1e5, cylinder, flat);
  EXPECT_NEAR(std::numbers::pi / 2 * c.peak * c.half_width, 1e5, 1e-6); // half ellipse
}

// Greatest shear found by walking down from the surface.
TEST(Hertz, GreatestShearLiesWhereSaid) {
  const LineContact c = line_contact(1e5, cylinder, flat);
  double worst = 0, at = 0;
  for (int i = 0; i < 20000; ++i) {
    const double z = 2 * c.half_width * i / 20000;
    if (shear_below(c, z) > worst) {
      worst = shear_below(c, z);
      at = z;
    }
  }
  EXPECT_NEAR(worst / c.shear, 1, 1e-7);
  EXPECT_NEAR(at / c.depth, 1, 2e-4);
}

// Two bodies under half-elliptic pressure: the gap that the deformation closes must be that of the radii. The slope of
// a half space under a line load p dx is -2 p dx / (pi E' (x - s)); integrated over the ellipse it is -2 p0 x/(E' a)
// for each body, together -2 p0 x / (E* a), which has to equal -x/R.
TEST(Hertz, DeformedBodiesFit) {
  const ContactBody hollow{-0.030, 110e9, 0.34};
  const LineContact c = line_contact(2e5, cylinder, hollow);
  const double curvature = 1 / 0.010 - 1 / 0.030;
  EXPECT_NEAR(2 * c.peak / (c.modulus * c.half_width) / curvature, 1, 1e-12);
}

TEST(Hertz, UtilisationAgainstFirstYield) {
  const LineContact c = line_contact(1e5, cylinder, flat);
  const Check check = check_line_contact(c, 2 * c.shear); // the shear just reaches yield/2
  EXPECT_NEAR(check.utilisation(), 1, 1e-12);
  EXPECT_NEAR(check_line_contact(c, 275e6).allowed.value / 275e6, 1.67, 0.005);
  EXPECT_EQ(check_line_contact(c, 275e6, 1e9).allowed.source, "case");
}

TEST(Hertz, NoForceNoPressure) {
  EXPECT_EQ(line_contact(0, cylinder, flat).peak, 0);
}

TEST(Hertz, MisuseIsNamed) {
  EXPECT_THROW(line_contact(1, flat, flat), std::invalid_argument);
  EXPECT_THROW(line_contact(1, cylinder, ContactBody{-0.009, 207e9, 0.3}), std::invalid_argument);
  EXPECT_THROW(line_contact(1, cylinder, ContactBody{}), std::invalid_argument);
}

} // namespace bedbow
