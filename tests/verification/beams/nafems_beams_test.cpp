// Frames and a deep beam of the NAFEMS benchmarks for free vibration.
#include "tests/verification/modes/vibration.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

const std::string book = "The Standard NAFEMS Benchmarks, TNSB Rev. 3, 1990";

std::string double_cross() {
  const double a = std::pow(125.0, 4) / 12;
  std::string text = head(200, 0.3, 8000) + "[solve]\ndimension = 2\n";
  for (int i = 0; i < 8; ++i) {
    const double angle = i * std::numbers::pi / 4;
    const Eigen::Vector3d tip(5000 * std::cos(angle), 0, 5000 * std::sin(angle));
    text += member("arm" + std::to_string(i), {0, 0, 0}, tip, slender(125 * 125, a, a, 2 * a), 8) +
            hold(tip, "\"x\", \"z\"");
  }
  return text;
}

// The reference's centre stays where it is. Two of the seven push it sideways, where arms stretch: there the dynamic
// stiffness of eight arms, four across and four along, is zero: EI k^3 2 B + EA b cot(b L) = 0 with the bending shape
// of an arm that is pinned at its tip and does not turn at the centre (Clough & Penzien, Dynamics of Structures, ch.
// 18).
double sideways(double from, double to) {
  const double E = 200e9, rho = 8000, L = 5, A = 0.125 * 0.125, I = std::pow(0.125, 4) / 12;
  const auto resists = [&](double hertz) {
    const double omega = 2 * std::numbers::pi * hertz;
    const double k = std::sqrt(omega) * std::pow(rho * A / (E * I), 0.25), z = k * L, b = omega * std::sqrt(rho / E);
    const double coth = std::cosh(z) / std::sinh(z);
    const double share = std::cos(z) / (std::cos(z) - coth * std::sin(z));
    return -2 * E * I * k * k * k * share * coth + E * A * b / std::tan(b * L);
  };
  for (int i = 0; i < 80; ++i) {
    const double middle = (from + to) / 2;
    (resists(middle) * resists(from) > 0 ? from : to) = middle;
  }
  return from;
}

// The references have no rotary inertia, which lowers mode n of an arm by (n pi r / L)^2 / 2: 2.6e-4 n^2.
TEST(NafemsFv2, PinEndedDoubleCross) {
  const std::vector<double> f = frequencies(vibrating(double_cross(), 16));
  ASSERT_EQ(f.size(), 16U);
  const std::string derived = "dynamic stiffness of the arms (derived; data of " + book + ", FV2)";
  record("D1", book, "mode 1", f[0], 11.336, 5e-4, "Hz");
  for (int i : {1, 2}) record("D1", derived, "mode " + std::to_string(i + 1), f[i], sideways(17.5, 17.70), 8e-4, "Hz");
  for (int i = 3; i < 8; ++i) record("D1", book, "mode " + std::to_string(i + 1), f[i], 17.709, 8e-4, "Hz");
  record("D1", book, "mode 9", f[8], 45.345, 2e-3, "Hz");
  for (int i : {9, 10}) record("D1", derived, "mode " + std::to_string(i + 1), f[i], sideways(56, 57.38), 2e-3, "Hz");
  for (int i = 11; i < 16; ++i) record("D1", book, "mode " + std::to_string(i + 1), f[i], 57.390, 2e-3, "Hz");
}

// Asked for few modes, the search must not skip copies of a repeated one.
TEST(NafemsFv2, RepeatedModesAreAllFound) {
  for (int wanted : {3, 5, 8, 9}) {
    const std::vector<double> f = frequencies(vibrating(double_cross(), wanted));
    ASSERT_EQ(f.size(), static_cast<std::size_t>(wanted));
    for (int i = 1; i < std::min(wanted, 8); ++i) EXPECT_NEAR(f[i], 17.709, 0.04) << wanted << " wanted, mode " << i;
    if (wanted == 9) {
      EXPECT_NEAR(f[8], 45.345, 0.1);
    }
  }
}

// One shear strain per element, as the static shapes have, finds omega^2 too high by (k h)^2 / 12 of shear's share.
double shear_error(int n) {
  const double k = n * std::numbers::pi / 10, h = 10.0 / 40;
  const double s = k * k / 3 * 2 * 1.3 * (12 + 11 * 0.3) / (10 * 1.3); // E I k^2 / (kappa G A)
  return 1.1 * s / (1 + s) * k * k * h * h / 24 + 1e-5;
}

TEST(NafemsFv5, DeepSimplySupportedBeam) {
  const std::string text = head(200, 0.3, 8000) +
                           member("beam", {0, 0, 0}, {10000, 0, 0}, R"(shape = "rectangle"
width = "2 m"
height = "2 m"
)",
                                  40) +
                           hold({0, 0, 0}, "\"x\", \"y\", \"z\", \"rx\"") + hold({10000, 0, 0}, "\"y\", \"z\"");
  const std::vector<double> f = frequencies(vibrating(text, 9));
  ASSERT_EQ(f.size(), 9U);
  const std::string derived = "Timoshenko beam in closed form, Cowper's kappa (derived; data of " + book + ", FV5)";
  const std::string torsion = "shaft with Saint-Venant's J = 0.14058 b^4 (derived; data of FV5)";
  record("D3", derived, "flexure 1", f[0], 42.645, shear_error(1), "Hz");
  record("D3", derived, "flexure 1, the other way", f[1], 42.645, shear_error(1), "Hz");
  record("D4", torsion, "torsion 1", f[2], 71.196, 3e-4, "Hz");
  record("D3", derived, "extension", f[3], 125.0, 1e-4, "Hz");
  record("D3", derived, "flexure 2", f[4], 148.15, shear_error(2), "Hz");
  record("D3", derived, "flexure 2, the other way", f[5], 148.15, shear_error(2), "Hz");
  record("D4", torsion, "torsion 2", f[6], 213.59, 1e-3, "Hz");
  record("D3", derived, "flexure 3", f[7], 283.47, shear_error(3), "Hz");
  record("D3", derived, "flexure 3, the other way", f[8], 283.47, shear_error(3), "Hz");
}

} // namespace
} // namespace bedbow::verification
