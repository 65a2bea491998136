#include "solver/sheet/sheet_law.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

// Plane strain by von Mises: the sheet is wide against its thickness and cannot widen, so it yields at 2/sqrt3 of the
// uniaxial stress.
constexpr double plane_strain = 2 / std::numbers::sqrt3;

double middle_radius(const Sheet& sheet) {
  return sheet.inside_radius + sheet.thickness / 2;
}

double plane_strain_modulus(const Material& m) {
  return m.E / (1 - m.nu * m.nu);
}

void require(bool known, const Material& material, const char* law, const char* value) {
  if (!known)
    throw std::invalid_argument("moment law '" + std::string(law) + "' needs " + value + " of material '" +
                                material.name + "'; give it, or choose another moment_law");
}

} // namespace

double rigid_plastic_moment(const Sheet& sheet, const Material& material) {
  require(material.yield > 0, material, "rigid-plastic", "yield");
  return plane_strain * material.yield * sheet.thickness * sheet.thickness / 4;
}

double power_law_moment(const Sheet& sheet, const Material& material) {
  require(material.K && material.n, material, "power-law", "K and n");
  const double n = *material.n, K = *material.K * std::pow(plane_strain, n + 1);
  return K * std::pow(sheet.thickness, n + 2) / ((n + 2) * std::pow(2, n + 1) * std::pow(middle_radius(sheet), n));
}

void builtin_moment_laws(Registry<MomentLawEntry>& laws) {
  laws.add({"rigid-plastic", "full plastic moment in plane strain, no hardening: (2/sqrt3) yield t^2/4",
            "Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, 2nd ed. 2002, sec. 6.5", rigid_plastic_moment});
  laws.add({"power-law", "flow stress K strain^n in plane strain, by the bend radius",
            "Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, 2nd ed. 2002, eqs 6.13-6.14", power_law_moment});
}

double SheetLoads::nose_lift(double angle) const {
  return apron * std::cos(angle) + grip;
}

SheetLoads sheet_loads(const Sheet& sheet, double moment) {
  return {moment, moment / sheet.flange, moment / sheet.grip};
}

double gardiner_ratio(double x) {
  return 4 * x * x * x - 3 * x + 1;
}

double springback(const Sheet& sheet, const Material& material, double moment) {
  const double E = plane_strain_modulus(material), t = sheet.thickness, rho = middle_radius(sheet);
  double kept = 0; // angle after unloading over angle under load
  if (sheet.moment_law == "rigid-plastic") {
    require(material.yield > 0, material, "rigid-plastic", "yield");
    const double x = rho * plane_strain * material.yield / (E * t);
    if (x < 0.5) kept = gardiner_ratio(x);
  } else {
    kept = 1 - 12 * moment * rho / (E * t * t * t);
  }
  if (!(kept > 0))
    throw std::invalid_argument("sheet: at this inside_radius the bend stays elastic and springs back entirely; give a "
                                "smaller inside_radius or a thicker sheet");
  return sheet.angle * (1 / kept - 1);
}

double known_springback(const Machine& m, const Registry<MomentLawEntry>& laws) {
  if (!m.sheet || m.sheet->material < 0) return 0;
  const Material& material = m.materials.at(static_cast<std::size_t>(m.sheet->material));
  const MomentLawEntry* law = laws.find(m.sheet->moment_law);
  if (!law) return 0;
  try {
    const double found = springback(*m.sheet, material, law->moment(*m.sheet, material));
    return std::isfinite(found) ? std::max(found, 0.0) : 0;
  } catch (const std::invalid_argument&) {
    return 0; // reported when the sheet is read, or when it is solved
  }
}

} // namespace bedbow
