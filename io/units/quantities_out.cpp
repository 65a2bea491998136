#include "io/units/quantities_out.h"

#include <array>
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

std::pair<std::string, double> in_file_unit(const std::string& key, double value) {
  struct Unit {
    std::string_view si, file;
    double factor;
  };
  static constexpr std::array<Unit, 4> units{
      {{"_N_m", "_N_mm", 1e3}, {"_m", "_mm", 1e3}, {"_Pa", "_MPa", 1e-6}, {"_rad", "_deg", 180 / std::numbers::pi}}};
  for (const Unit& u : units)
    if (key.ends_with(u.si)) return {key.substr(0, key.size() - u.si.size()) + std::string(u.file), value * u.factor};
  return {key, value};
}

} // namespace bedbow
