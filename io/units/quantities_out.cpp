#include "io/units/quantities_out.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace bedbow {

double twelve_digits(double value) {
  if (!std::isfinite(value)) return value;
  char text[32];
  std::snprintf(text, sizeof text, "%.12g", value);
  return std::strtod(text, nullptr);
}

FileUnit file_unit(Quantity quantity) {
  switch (quantity) {
  case Quantity::length:
    return {"_mm", 1e3};
  case Quantity::angle:
    return {"_deg", to_deg(1)};
  case Quantity::force:
    return {"_N", 1};
  case Quantity::moment:
    return {"_Nm", 1};
  case Quantity::stress:
    return {"_MPa", 1e-6};
  case Quantity::ratio:
    break;
  }
  return {"", 1};
}

} // namespace bedbow
