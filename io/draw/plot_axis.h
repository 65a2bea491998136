/// \file
/// The scale of one axis of a plot: round limits that enclose the data, and the positions of the marks.
#pragma once

#include <string>
#include <vector>

namespace bedbow {

/// Round marks from `low` to `high`, both included, `step` apart.
struct Axis {
  double low = 0, high = 1, step = 0.2;
  int decimals = 1; ///< needed to distinguish the marks

  /// Place of a value between the ends, 0 to 1.
  [[nodiscard]] double place(double value) const { return (value - low) / (high - low); }
  [[nodiscard]] std::vector<double> marks() const;
  /// A mark as text, with its decimals and a true minus sign.
  [[nodiscard]] std::string label(double mark) const;
};

/// An axis whose steps are 1, 2 or 5 times a power of ten.
/// \param low,high range of the data; swapped, equal or non-finite values are corrected (0 to 1 where nothing is
/// known). \param steps approximate number of steps, >= 2. \param tight ends at the data rather than at round numbers
/// (for x along a bar).
Axis axis_over(double low, double high, int steps, bool tight = false);

} // namespace bedbow
