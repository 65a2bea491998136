// Bars against closed forms: Timoshenko's frequency equation, free bars and their nodes, convergence from above.
#include "tests/verification/modes/vibration.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

using std::numbers::pi;

struct Bar {
  double E = 210e9, nu = 0.3, rho = 7850, b = 0.02, h = 0.06, L = 0.5;
  [[nodiscard]] double A() const { return b * h; }
  [[nodiscard]] double I() const { return b * h * h * h / 12; }
};

// Both roots: w^4 rho^2 I A / (kGA) - w^2 (rho A + k^2 (rho I + E I rho A / (kGA))) + E I k^4 = 0.
// From rho A w.. = kGA (w'' - t'), rho I t.. = E I t'' + kGA (w' - t) with w = sin k x, t = cos k x (Timoshenko 1921);
// with Cowper's shear coefficient.
double timoshenko(const Bar& s, int n) {
  const double k = n * pi / s.L;
  const double kga = 10 * (1 + s.nu) / (12 + 11 * s.nu) * s.E / (2 * (1 + s.nu)) * s.A();
  const double a = s.rho * s.I() * s.rho * s.A() / kga;
  const double b = s.rho * s.A() + k * k * (s.rho * s.I() + s.E * s.I() * s.rho * s.A() / kga);
  const double c = s.E * s.I() * std::pow(k, 4);
  return std::sqrt(2 * c / (b + std::sqrt(b * b - 4 * a * c))) / (2 * pi);
}

std::string pinned(int divisions, const std::string& extra = "", const std::string& shape = "") {
  return head(210, 0.3, 7850) + "[solve]\ndimension = 2\n" + extra +
         member("bar", {0, 0, 0}, {500, 0, 0},
                shape.empty() ? R"(shape = "rectangle"
width = "20 mm"
height = "60 mm"
)"
                              : shape,
                divisions) +
         hold({0, 0, 0}, "\"x\", \"z\"") + hold({500, 0, 0}, "\"z\"");
}

// One shear strain per element finds omega^2 too high by (k h)^2 / 12 of shear's share, cubics by (k h)^4 / 720.
double mesh_error(int n, int divisions) {
  const Bar b;
  const double k = n * pi / b.L, kh = n * pi / divisions;
  const double s = k * k * b.I() / b.A() * 2 * (12 + 11 * b.nu) / 10;
  return s / (1 + s) * kh * kh / 24 + std::pow(kh, 4) / 1440;
}

TEST(TimoshenkoBeam, PinnedBarFrequencies) {
  const std::vector<double> f = frequencies(vibrating(pinned(24), 4));
  const std::array<double, 3> bending{f.at(0), f.at(1), f.at(3)}; // the third swings along x
  for (int n = 1; n <= 3; ++n)
    record("", "Timoshenko's beam equations with sin(n pi x/L), both roots (derived)",
           "pinned bar, mode " + std::to_string(n), bending[n - 1], timoshenko({}, n), 1.1 * mesh_error(n, 24), "Hz");
  record("", "rod held at one end, f = sqrt(E / rho) / 4 L", "pinned bar, along x", f.at(2),
         std::sqrt(210e9 / 7850) / 2, std::pow(pi / 48, 2) / 24 * 1.1, "Hz");
}

// Order of convergence of the second mode from above.
void converges(const std::string& shape, double order, double tolerance) {
  std::vector<double> f;
  for (int divisions : {4, 8, 16, 32}) f.push_back(frequencies(vibrating(pinned(divisions, "", shape), 2)).at(1));
  for (std::size_t i = 1; i < f.size(); ++i) EXPECT_LT(f[i], f[i - 1]);
  if (shape.empty()) {
    EXPECT_GT(f.back(), timoshenko({}, 2));
  }
  record("", "(k h)^2 of linear shapes, Numer. Math. 50 (1986) 205; (k h)^4/720 of cubic ones (derived)",
         shape.empty() ? "order, with shear" : "order, without shear", std::log2((f[0] - f[1]) / (f[1] - f[2])), order,
         tolerance);
}

TEST(TimoshenkoBeam, ConsistentMassConvergesFromAbove) {
  converges("", 2, 0.15);
  converges(slender(1200, 360000, 40000, 126000), 4, 0.1);
}

TEST(TimoshenkoBeam, LumpedMassConvergesToo) {
  const double f = frequencies(vibrating(pinned(48, "mass = \"lumped\"\n"), 1)).at(0);
  record("", "Timoshenko's beam equations with sin(n pi x/L), both roots (derived)", "pinned bar, lumped mass", f,
         timoshenko({}, 1), 2e-3, "Hz");
}

Findings free_bar() {
  return vibrating(head(210, 0.3, 7850) + member("bar", {0, 0, 0}, {1000, 0, 0}, slender(100, 833, 8330, 3000), 40), 8);
}

// Where the first bending shape of a free bar crosses zero, between nodes on a straight line.
double first_crossing(const BarField& bar, int k) {
  for (std::size_t i = 0; i + 1 < bar.points.size(); ++i) {
    const double a = bar.motion[i][k], b = bar.motion[i + 1][k];
    if (a * b <= 0 && a != b) return bar.points[i].x() + (bar.points[i + 1].x() - bar.points[i].x()) * a / (a - b);
  }
  return -1;
}

TEST(Blevins, FreeBarAndItsNodes) {
  const Findings f = free_bar();
  const auto& modes = f.modes->modes;
  ASSERT_EQ(modes.size(), 8U);
  for (std::size_t i = 0; i < 6; ++i) EXPECT_EQ(modes[i].frequency, 0) << modes[i].description;
  EXPECT_EQ(modes[0].description, "member bar slides along x");
  EXPECT_EQ(modes[1].description, "member bar slides along y");
  EXPECT_EQ(modes[2].description, "member bar slides along z");
  EXPECT_EQ(modes[3].description, "member bar turns about x");
  EXPECT_EQ(modes[6].description, "member bar bends along z");
  EXPECT_EQ(f.modes->joint_state, "all joints closed");
  const double omega = std::pow(4.7300407, 2) * std::sqrt(210e9 * 833e-12 / (7850 * 100e-6));
  // Rotary inertia lowers it: (r / L)^2 times 49.5 / 2 for this mode, 2.1e-4 here.
  record("", "cos x cosh x = 1; 4.7300 in Thomson, Theory of Vibration with Applications, app. D", "free bar, mode 1",
         modes[6].frequency, omega / (2 * pi), 3e-4, "Hz");
  const BarField& bar = modes[6].fields.bars.at(0);
  record("A25", "zero of that mode's shape (derived); 0.5516 apart: Wikipedia, Bessel points",
         "c / L of the outer node", first_crossing(bar, 2), 0.224158, 1e-3);
}

} // namespace
} // namespace bedbow::verification
