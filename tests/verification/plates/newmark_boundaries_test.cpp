// Newmark's equation with ends of every kind: w'''''' - alpha^2 w'''' = q''/EI0 - alpha^2 q/EIfull, solved here for a
// uniform load by its six fundamental solutions; and the effective lengths of the gamma method.
#include "tests/verification/beams/composite_beam.h"
#include "tests/verification/support/record.h"
#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

namespace bedbow::verification::composite {
namespace {

enum class End { pinned, clamped, free };

/// Deflection under q per length, in xi = x / L: w = sum of c_i f_i + q L^4 xi^4 / (24 EIfull).
class Equation {
public:
  Equation(double k, double q, End left, End right)
      : a_(alpha(k) * L)
      , load_(q * std::pow(L, 4) / EIfull) {
    Eigen::Matrix<double, 6, 6> m;
    Vector6 b;
    int row = 0;
    for (const auto& [end, xi] : {std::pair{left, 0.0}, std::pair{right, 1.0}}) {
      // One derivative, less so much of another, is that.
      const auto condition = [&, at = xi](int order, double is, double other = 0, int other_order = 0) {
        m.row(row) = (functions(order, at) - other * functions(other_order, at)).transpose();
        b[row++] = is - (particular(order, at) - other * particular(other_order, at));
      };
      if (end != End::free) condition(0, 0);
      if (end == End::clamped) {
        condition(1, 0);
        // No slip, so the force between the bars stays as it is: r N' = V + EI0 w''' = 0.
        condition(5, 0, a_ * a_ * (1 - EI0 / EIfull), 3);
      } else {
        condition(2, 0);
        condition(4, load_ * EIfull / EI0);
      }
      if (end == End::free) condition(5, 0, a_ * a_, 3); // no shear
    }
    c_ = m.fullPivLu().solve(b);
  }

  [[nodiscard]] double w(double xi) const { return functions(0, xi).dot(c_) + particular(0, xi); }

private:
  using Vector6 = Eigen::Matrix<double, 6, 1>;

  /// Derivatives of 1, xi, xi^2, xi^3, exp(-a xi), exp(-a (1 - xi)).
  [[nodiscard]] Vector6 functions(int order, double xi) const {
    Vector6 f;
    for (int p = 0; p < 4; ++p) f[p] = power(p, order, xi);
    f[4] = std::pow(-a_, order) * std::exp(-a_ * xi);
    f[5] = std::pow(a_, order) * std::exp(-a_ * (1 - xi));
    return f;
  }
  [[nodiscard]] double particular(int order, double xi) const { return load_ / 24 * power(4, order, xi); }
  static double power(int p, int order, double xi) {
    double factor = 1;
    for (int i = 0; i < order; ++i) factor *= p - i;
    return factor == 0 ? 0 : factor * std::pow(xi, p - order);
  }

  double a_, load_;
  Vector6 c_;
};

const std::string everything = R"("x", "y", "z", "rx", "ry", "rz")";

std::string cantilever() {
  return held("0 mm", everything);
}

/// Half of a beam on three supports: over the middle one neither slope nor slip, by symmetry.
std::string half_of_two_spans() {
  return held("0 mm", everything) + held("4000 mm", R"("y", "z", "rx")");
}

std::string stiffness_label(const std::string& what, double k) {
  return what + ", k = " + std::to_string(static_cast<int>(k)) + " N/mm2";
}

// The solution of the equation itself, where a closed form is at hand: F7's figure.
TEST(NewmarkBoundaries, EquationGivesThePublishedFigure) {
  EXPECT_NEAR(Equation(slip, 1, End::pinned, End::pinned).w(0.5), 7.55990, 5e-6);
}

TEST(NewmarkBoundaries, CantileverAndTwoSpans) {
  for (const double k : {5., 50., 500.}) {
    record("F3", source, stiffness_label("w end, cantilever, uniform load", k),
           sunk(solved(t_section(screws(k), uniform_load(), cantilever())), "end"),
           Equation(k, 1, End::clamped, End::free).w(1), discrete, "mm");
    record("F3", source, stiffness_label("w mid-span, two spans, uniform load", k),
           sunk(solved(t_section(screws(k), uniform_load(), half_of_two_spans())), "mid"),
           Equation(k, 1, End::clamped, End::pinned).w(0.5), discrete, "mm");
  }
}

constexpr const char* annex = "EN 1995-1-1:2004 B.1.2 (from memory)";

// A cantilever is half of a beam of twice its length: under moments that fall like a quarter of a cosine the gamma
// method with l = 2 x length is exact, as it is for the half sine. P pulls the end down, P p cos(p x) the rest up.
TEST(En1995AnnexB, EffectiveLengthOfACantilever) {
  const double p = std::numbers::pi / (2 * L), P = 500;
  for (const double k : {5., 50., 500.})
    record("F2", "half of a beam of twice the length (derived), the rule of EN 1995-1-1 Annex B",
           stiffness_label("w end, cantilever, quarter cosine", k),
           sunk(solved(t_section(screws(k),
                                 force_down("4000 mm", P) + wave_load(P * p, std::numbers::pi / 2, std::numbers::pi),
                                 cantilever())),
                "end"),
           P / (p * p * p * gamma_stiffness(k, 2 * L)), discrete, "mm");
}

// Between supports 0.8 of the span is a rule of thumb: nearer than the span itself, which is what it is for.
TEST(En1995AnnexB, EffectiveLengthOfASpanOfTwo) {
  for (const double k : {5., 50., 500.}) {
    const double w = sunk(solved(t_section(screws(k), uniform_load(), half_of_two_spans())), "mid");
    const auto miss = [&](double length) {
      return std::abs(std::pow(L, 4) / (192 * gamma_stiffness(k, length)) / w - 1);
    };
    record_less("F2", annex, stiffness_label("two spans: error of the gamma method with 0.8 l, against that with l", k),
                miss(0.8 * L), miss(L));
  }
}

} // namespace
} // namespace bedbow::verification::composite
