/// \file
/// SI values in the fixed units of result files: mm, N, MPa, deg, Hz.
#pragma once

#include "mesh/piece/quantity.h"
#include "mesh/piece/si.h"

namespace bedbow {

constexpr double to_mm(double metres) {
  return metres * 1e3;
}
constexpr double to_MPa(double pascals) {
  return pascals * 1e-6;
}
constexpr double to_deg(double radians) {
  return si::in_degrees(radians);
}
constexpr double to_N_per_mm(double newtons_per_metre) {
  return newtons_per_metre * 1e-3;
}
constexpr double to_N_mm(double newton_metres) {
  return newton_metres * 1e3;
}

/// A value rounded to twelve significant digits, so that files read 900 and not 900.0000000000001. NaN and infinity
/// stay.
double twelve_digits(double value);

/// Unit of a quantity in result files: end of its keys, and file value = SI value * scale.
struct FileUnit {
  const char* suffix; ///< "_mm"
  double scale;
};
FileUnit file_unit(Quantity quantity);

} // namespace bedbow
