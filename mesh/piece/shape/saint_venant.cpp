#include "mesh/piece/shape/saint_venant.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

RectangleTorsion rectangle_torsion(double width, double height) {
  using std::numbers::pi;
  // sum (-1)^((n-1)/2)/n^2 is Catalan's constant and sum 1/n^5 is (31/32) zeta(5): summing only 1 - tanh
  // leaves terms that decay exponentially.
  constexpr double catalan = 0.915965594177219015;
  constexpr double fifth = 31.0 / 32.0 * 1.036927755143369926;
  const double a = std::max(width, height), b = std::min(width, height);
  double sum_J = fifth, sum_long = 0, sum_short = catalan, sign = 1;
  for (int n = 1; n <= 25; n += 2, sign = -sign) {
    const double argument = n * pi * a / (2 * b);
    const double lack = 2 / (std::exp(2 * argument) + 1); // 1 - tanh
    sum_J -= lack / std::pow(n, 5);
    sum_long += 1 / (n * n * std::cosh(argument));
    sum_short -= sign * lack / (n * n);
  }
  RectangleTorsion out;
  out.J = a * b * b * b * (1.0 / 3.0 - 64 / std::pow(pi, 5) * (b / a) * sum_J);
  out.tau_long = b / out.J * (1 - 8 / (pi * pi) * sum_long);
  out.tau_short = b / out.J * 8 / (pi * pi) * sum_short;
  return out;
}

} // namespace bedbow
