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

namespace {

OutputUnit unit_of(Quantity of, const OutputUnits& units) {
  switch (of) {
  case Quantity::length:
    return units.length;
  case Quantity::angle:
    return {"deg", si::degree};
  case Quantity::force:
    return units.force;
  case Quantity::stress:
    return units.stress;
  case Quantity::moment:
    return {"N m", 1};
  case Quantity::ratio:
    break;
  }
  return {"", 1};
}

} // namespace

std::string figure_text(double value, Quantity of, const OutputUnits& units) {
  if (of == Quantity::length) return length_text(value, units, 1e-6);
  if (of == Quantity::angle) return degrees_text(value);
  return of == Quantity::force ? force_text(value, units) : fixed(value, 2);
}

std::string short_number(double value) {
  if (std::isnan(value)) return "-";
  char text[32];
  std::snprintf(text, sizeof text, "%.6g", value == 0 ? 0.0 : value);
  return text;
}

std::string short_text(double value, const OutputUnit& unit) {
  return short_number(value / unit.size) + (unit.name.empty() ? "" : " ") + unit.name;
}

std::string short_text(double value, Quantity of, const OutputUnits& units) {
  return short_text(value, unit_of(of, units));
}

} // namespace bedbow
