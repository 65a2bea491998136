#include "io/units/output_units.h"

#include "mesh/piece/si.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bedbow {

OutputUnit force_per_length(const OutputUnits& u) {
  const OutputUnit force = u.force.name == "kN" ? OutputUnit{"N", 1} : u.force;
  return {force.name + "/" + u.length.name, force.size / u.length.size};
}

int decimals_for(const OutputUnit& unit, double resolution) {
  return std::clamp(static_cast<int>(std::lround(-std::log10(resolution / unit.size))), 0, 9);
}

std::string fixed(double value, int decimals) {
  if (std::isnan(value)) return "-";
  if (std::isinf(value)) return value > 0 ? "inf" : "-inf";
  char text[400]; // the greatest double has 309 digits before its point
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  const std::string out = text;
  // "-0.000" looks like a fault.
  if (out[0] == '-' && out.find_first_not_of("-0.") == std::string::npos) return out.substr(1);
  return out;
}

std::string in_unit(double value, const OutputUnit& unit, double resolution) {
  return fixed(value / unit.size, decimals_for(unit, resolution));
}

std::string length_text(double value, const OutputUnits& units, double resolution) {
  return in_unit(value, units.length, resolution) + " " + units.length.name;
}

std::string force_text(double value, const OutputUnits& units) {
  return in_unit(value, units.force, 1) + " " + units.force.name;
}

std::string moment_text(double value, const OutputUnits& u) {
  const OutputUnit unit{u.force.name + " " + u.length.name, u.force.size * u.length.size};
  return in_unit(value, unit, 0.1) + " " + unit.name;
}

std::string degrees_text(double value) {
  return fixed(si::in_degrees(value), 3) + " deg";
}

} // namespace bedbow
