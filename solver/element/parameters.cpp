#include "solver/element/parameters.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr std::array<KnownParameter, 13> of_line{{{"E", "Pa"},
                                                  {"G", "Pa"},
                                                  {"nu", "-"},
                                                  {"density", "kg/m^3"},
                                                  {"A", "m^2"},
                                                  {"Iyy", "m^4"},
                                                  {"Izz", "m^4"},
                                                  {"Iyz", "m^4"},
                                                  {"J", "m^4"},
                                                  {"Ay", "m^2"},
                                                  {"Az", "m^2"},
                                                  {"shear_centre_y", "m"},
                                                  {"shear_centre_z", "m"}}};
constexpr std::array<KnownParameter, 4> of_surface{
    {{"E", "Pa"}, {"nu", "-"}, {"density", "kg/m^3"}, {"thickness", "m"}}};

/// Selects the parameters that an element declares. \param values in the order of known_parameters.
std::vector<double> pick(const ElementEntry& element, std::span<const KnownParameter> known,
                         std::span<const double> values) {
  std::vector<double> out;
  for (const ElementParameter& p : element.parameters) {
    const auto it = std::ranges::find(known, p.name, [](const KnownParameter& k) { return std::string(k.name); });
    if (it == known.end())
      throw std::invalid_argument("element '" + element.name + "' requests " + p.name +
                                  "; available: " + known_parameter_names(element.dimension));
    out.push_back(values[static_cast<std::size_t>(it - known.begin())]);
  }
  return out;
}

/// A property that changes the bending of the beam must not be ignored silently.
void must_ask(const ElementEntry& element, const char* name, double value, double negligible) {
  if (std::abs(value) <= negligible ||
      std::ranges::find(element.parameters, name, &ElementParameter::name) != element.parameters.end())
    return;
  throw std::invalid_argument("element '" + element.name + "' does not support " + name +
                              ", which this section has: turn the section or use another element");
}

} // namespace

std::span<const KnownParameter> known_parameters(int dimension) {
  if (dimension == 1) return of_line;
  return of_surface;
}

std::string known_parameter_names(int dimension) {
  std::string out;
  for (const KnownParameter& p : known_parameters(dimension)) out += (out.empty() ? "" : ", ") + std::string(p.name);
  return out;
}

std::vector<double> line_parameters(const ElementEntry& element, const BeamData& data, double nu) {
  const SectionProperties& s = data.section;
  const double rounding = 1e-9;
  must_ask(element, "Iyz", s.Iyz, rounding * std::sqrt(s.Iyy * s.Izz));
  must_ask(element, "shear_centre_y", s.shear_centre.x(), rounding * std::sqrt(s.A));
  must_ask(element, "shear_centre_z", s.shear_centre.y(), rounding * std::sqrt(s.A));
  const std::array<double, of_line.size()> values{data.E,
                                                  data.G,
                                                  nu,
                                                  data.density,
                                                  s.A,
                                                  s.Iyy,
                                                  s.Izz,
                                                  s.Iyz,
                                                  s.J,
                                                  s.Ay,
                                                  s.Az,
                                                  s.shear_centre.x(),
                                                  s.shear_centre.y()};
  return pick(element, of_line, values);
}

std::vector<double> surface_parameters(const ElementEntry& element, const ShellData& data) {
  const std::array<double, of_surface.size()> values{data.E, data.nu, data.density, data.thickness};
  return pick(element, of_surface, values);
}

Eigen::Matrix3d line_axes(const Eigen::Matrix3Xd& corners) {
  const Eigen::Vector3d x = (corners.col(1) - corners.col(0)).normalized();
  const Eigen::Vector3d up = std::abs(x.z()) > 1 - 1e-9 ? Eigen::Vector3d::UnitY() : Eigen::Vector3d::UnitZ();
  const Eigen::Vector3d z = (up - up.dot(x) * x).normalized();
  Eigen::Matrix3d axes;
  axes.row(0) = x;
  axes.row(1) = z.cross(x);
  axes.row(2) = z;
  return axes;
}

} // namespace bedbow
