#include "io/draw/plot_axis.h"

#include "io/units/output_units.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

constexpr double part_of_step = 1e-6; ///< tolerance for rounding

/// The least of 1, 2, 5, 10 times a power of ten that is not below `rough`.
double round_step(double rough) {
  const double power = std::pow(10, std::floor(std::log10(rough)));
  for (const double digit : {1.0, 2.0, 5.0})
    if (digit * power >= rough * (1 - part_of_step)) return digit * power;
  return 10 * power;
}

/// Makes a valid range of any two values.
void put_right(double& low, double& high) {
  if (!std::isfinite(low) || !std::isfinite(high)) {
    low = 0;
    high = 1;
  }
  if (low > high) std::swap(low, high);
  const double least = std::max({std::abs(low), std::abs(high), 1e-9}) * 1e-9;
  if (high - low < least) {
    const double half = low == 0 ? 1 : std::abs(low) / 2;
    low -= half;
    high += half;
  }
}

} // namespace

std::vector<double> Axis::marks() const {
  std::vector<double> out;
  for (double i = std::ceil(low / step - part_of_step); i * step <= high + step * part_of_step; ++i)
    out.push_back(i * step);
  return out;
}

std::string Axis::label(double mark) const {
  std::string text = fixed(mark, decimals);
  if (text.starts_with('-')) text.replace(0, 1, "\u2212");
  return text;
}

Axis axis_over(double low, double high, int steps, bool tight) {
  put_right(low, high);
  Axis axis;
  axis.step = round_step((high - low) / std::max(steps, 2));
  axis.decimals = std::max(0, static_cast<int>(-std::floor(std::log10(axis.step) + part_of_step)));
  axis.low = tight ? low : std::floor(low / axis.step + part_of_step) * axis.step;
  axis.high = tight ? high : std::ceil(high / axis.step - part_of_step) * axis.step;
  return axis;
}

} // namespace bedbow
