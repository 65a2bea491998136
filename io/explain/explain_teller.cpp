#include "io/explain/explain_parts.h"
#include "io/text/text.h"
#include "mesh/piece/si.h"

#include <cmath>
#include <cstdio>

namespace bedbow {

std::string short_number(double value) {
  if (std::isnan(value)) return "-";
  char text[32];
  std::snprintf(text, sizeof text, "%.6g", value == 0 ? 0.0 : value);
  return text;
}

std::string Teller::number(double length) const {
  // Less than a nanometre is rounding from unit conversion.
  const double value = length / case_.output.length.size;
  return short_number(std::abs(length) < 1e-9 ? 0 : value);
}

std::string Teller::length(double value) const {
  return number(value) + " " + case_.output.length.name;
}

std::string Teller::force(double value) const {
  return short_number(value / case_.output.force.size) + " " + case_.output.force.name;
}

std::string Teller::stress(double value) const {
  return short_number(value / case_.output.stress.size) + " " + case_.output.stress.name;
}

std::string Teller::stiffness(double value) const {
  return short_number(value * case_.output.length.size / case_.output.force.size) + " " + case_.output.force.name +
         "/" + case_.output.length.name;
}

std::string Teller::degrees(double angle) {
  return short_number(si::in_degrees(angle)) + " deg";
}

std::string Teller::place(std::initializer_list<double> lengths) const {
  std::string out;
  for (double l : lengths) out.append(out.empty() ? "" : ", ").append(number(l));
  return out;
}

std::string Teller::sizes(const Shape& shape) const {
  std::string out = shape.diameter > 0 ? "dia " + number(shape.diameter) : "";
  for (double size : {shape.width, shape.height, shape.wall})
    if (size > 0) out.append(out.empty() ? "" : " x ").append(number(size));
  if (out.empty() && !shape.given.empty()) out = "given";
  return shape.turn != 0 ? out + ", turned " + degrees(shape.turn) : out;
}

std::string Teller::material(int index) const {
  if (index < 0) return "-";
  return printable(case_.machine.materials[static_cast<std::size_t>(index)].name);
}

} // namespace bedbow
