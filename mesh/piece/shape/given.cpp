#include "mesh/piece/shape/check.h"
#include "mesh/piece/shapes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr std::array keys{"A", "Iyy", "Izz", "J", "Iyz", "Ay", "Az", "shear_centre_y", "shear_centre_z", "Wt"};

void check_keys(const Shape& shape) {
  for (const auto& [key, value] : shape.given) {
    if (std::ranges::find(keys, key) == keys.end())
      throw std::invalid_argument("section: unknown property '" + key +
                                  "'; available: A, Iyy, Izz, J, Iyz, Ay, Az, shear_centre_y, shear_centre_z, Wt");
    if (!std::isfinite(value)) throw std::invalid_argument("section: " + key + " must be a finite number");
  }
}

double needed(const Shape& shape, const char* key) {
  const auto it = shape.given.find(key);
  if (it == shape.given.end()) throw std::invalid_argument("section: " + std::string(key) + " is missing");
  if (!(it->second > 0)) throw std::invalid_argument("section: " + std::string(key) + " must be greater than 0");
  return it->second;
}

double optional(const Shape& shape, const char* key, double otherwise) {
  return shape.given.contains(key) ? shape.given.at(key) : otherwise;
}

double optional_positive(const Shape& shape, const char* key, double otherwise) {
  return shape.given.contains(key) ? needed(shape, key) : otherwise;
}

SectionProperties properties(const Shape& shape) {
  SectionProperties p;
  p.A = needed(shape, "A");
  p.Iyy = needed(shape, "Iyy");
  p.Izz = needed(shape, "Izz");
  p.J = needed(shape, "J");
  p.Iyz = optional(shape, "Iyz", 0);
  if (!(p.Iyz * p.Iyz < p.Iyy * p.Izz))
    throw std::invalid_argument("section: Iyz^2 must be less than Iyy Izz, as in every real section");
  p.Ay = optional_positive(shape, "Ay", p.A * 5 / 6);
  p.Az = optional_positive(shape, "Az", p.A * 5 / 6);
  p.shear_centre = {optional(shape, "shear_centre_y", 0), optional(shape, "shear_centre_z", 0)};
  return p;
}

} // namespace

Section given_section(const Shape& shape, double /*nu*/) {
  check_keys(shape);
  Section out;
  SectionProperties& p = out.props = properties(shape);
  const double b = shape.width > 0 ? shape.width : std::sqrt(12 * p.Izz / p.A);
  const double h = shape.height > 0 ? shape.height : std::sqrt(12 * p.Iyy / p.A);
  p.lower = {-b / 2, -h / 2};
  p.upper = {b / 2, h / 2};
  const double torsion = 1 / optional_positive(shape, "Wt", p.J / std::min(b, h));
  for (const double y : {-1.0, 0.0, 1.0})
    for (const double z : {-1.0, 0.0, 1.0}) {
      StressPoint point;
      point.y = y * b / 2;
      point.z = z * h / 2;
      if (y == 0) point.tau_Vy.x() = 1.25 / p.Ay;
      if (z == 0) point.tau_Vz.y() = 1.25 / p.Az;
      if (z == 0) point.tau_T.y() = y * torsion;
      if (y == 0) point.tau_T.x() = -z * torsion;
      out.points.push_back(point);
    }
  out.outline = {{{-b / 2, -h / 2}, {b / 2, -h / 2}, {b / 2, h / 2}, {-b / 2, h / 2}}};
  return out;
}

} // namespace bedbow
