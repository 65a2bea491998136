#include "mesh/piece/fastener.h"
#include "solver/strength/stud.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {
constexpr double pi = std::numbers::pi;
const Stud stud{0.018, 0.140, 205e9};
const double EI = 205e9 * pi / 64 * std::pow(0.018, 4);
} // namespace

// Moment-area: a beam whose ends stay parallel but move apart by delta has end moments M with delta = M L^2/(6 EI);
// one end turned by theta with the other held gives M = 4 EI theta / L there. Found again by integrating curvature.
TEST(Stud, MomentsIntegrateBackToOffsetAndTilt) {
  const int n = 10000;
  const double L = stud.free_length;
  const auto end_of = [&](double M_start, double M_end) {
    double slope = 0, offset = 0;
    for (int i = 0; i < n; ++i) {
      const double s = (i + 0.5) / n, curvature = (M_start + (M_end - M_start) * s) / EI;
      offset += (slope + curvature * L / n / 2) * L / n;
      slope += curvature * L / n;
    }
    return std::pair{offset, slope};
  };
  const double M = stud_moment(stud, 0.0005, 0);
  EXPECT_NEAR(end_of(M, -M).first, 0.0005, 1e-9);
  EXPECT_NEAR(end_of(M, -M).second, 0, 1e-12);
  const double turned = stud_moment(stud, 0, 0.01);
  EXPECT_NEAR(end_of(-turned / 2, turned).second, 0.01, 1e-8); // half of it reaches the held end
  EXPECT_NEAR(end_of(-turned / 2, turned).first, 0, 1e-9);
  const double free_nut = stud_moment(stud, 0.0005, 0.01, true);
  EXPECT_NEAR(end_of(free_nut, 0).first, 0.0005, 1e-9);
}

TEST(Stud, BothMovementsAddUpWhateverTheirSign) {
  EXPECT_DOUBLE_EQ(stud_moment(stud, -0.001, 0.01), stud_moment(stud, 0.001, -0.01));
}

TEST(Stud, StressByHand) {
  const double A = pi / 4 * 0.018 * 0.018, W = pi / 32 * std::pow(0.018, 3);
  EXPECT_NEAR(stud_stress(stud, 10000, 0, 50), 10000 / A + 50 / W, 1);
  EXPECT_NEAR(stud_stress(stud, 0, 10000, 0), std::sqrt(3.0) * 4 / 3 * 10000 / A, 1);
  const Check c = check_stud(stud, 10000, 0, 50, 640e6);
  EXPECT_NEAR(c.utilisation(), (10000 / A + 50 / W) / 640e6, 1e-9);
  EXPECT_EQ(check_stud(stud, 10000, 0, 50, 0).utilisation(), 0);
}

TEST(Stud, StressedDiameterLiesBetweenCoreAndPitch) {
  const Thread m20 = *find_thread("M20");
  const double d = stress_diameter(m20);
  EXPECT_GT(d, m20.core());
  EXPECT_LT(d, m20.pitch_diameter());
}

TEST(Stud, MisuseIsNamed) {
  EXPECT_THROW(stud_moment({0, 0.1, 2e11}, 0, 0), std::invalid_argument);
  EXPECT_THROW(stud_stress({0.01, 0, 2e11}, 0, 0, 0), std::invalid_argument);
}

} // namespace bedbow
