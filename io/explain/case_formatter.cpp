#include "io/explain/explain_parts.h"
#include "io/text/text.h"

#include <cmath>

namespace bedbow {

std::string CaseFormatter::number(double length) const {
  // Less than a nanometre is rounding from unit conversion.
  const double value = length / case_.output.length.size;
  return short_number(std::abs(length) < 1e-9 ? 0 : value);
}

std::string CaseFormatter::length(double value) const {
  return number(value) + " " + case_.output.length.name;
}

std::string CaseFormatter::force(double value) const {
  return short_text(value, case_.output.force);
}

std::string CaseFormatter::stiffness(double value) const {
  const OutputUnit &force = case_.output.force, &length = case_.output.length;
  return short_text(value, {force.name + "/" + length.name, force.size / length.size});
}

std::string CaseFormatter::degrees(double angle) {
  return short_text(angle, Quantity::angle, {});
}

std::string CaseFormatter::place(std::initializer_list<double> lengths) const {
  std::string out;
  for (double l : lengths) out.append(out.empty() ? "" : ", ").append(number(l));
  return out;
}

std::string CaseFormatter::sizes(const Shape& shape) const {
  std::string out = shape.diameter > 0 ? "dia " + number(shape.diameter) : "";
  for (double size : {shape.width, shape.height, shape.wall})
    if (size > 0) out.append(out.empty() ? "" : " x ").append(number(size));
  if (out.empty() && !shape.given.empty()) out = "given";
  return shape.turn != 0 ? out + ", turned " + degrees(shape.turn) : out;
}

std::string CaseFormatter::material(int index) const {
  if (index < 0) return "-";
  return printable(case_.machine.materials[static_cast<std::size_t>(index)].name);
}

} // namespace bedbow
