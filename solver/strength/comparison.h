/// \file
/// Comparison of computed values.
#pragma once

#include <cmath>

namespace bedbow {

/// Whether a value exceeds the greatest so far by more than rounding: of places that are equal by symmetry the first is
/// the worst, whatever their last digits.
inline bool clearly_greater(double value, double most) {
  return value > most + 1e-9 * std::abs(most);
}

} // namespace bedbow
