#include "solver/sheet/sheet_law.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <stdexcept>

namespace bedbow {

namespace {

// Plane strain by von Mises: the sheet is wide against its thickness and cannot widen, so it yields at 2/sqrt3 of the
// uniaxial stress.
constexpr double plane_strain = 2 / std::numbers::sqrt3;

// Names of the built-in laws.
constexpr const char* rigid_plastic = "rigid-plastic";
constexpr const char* power_law = "power-law";

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

/// "more than the 181.9 N mm/mm of rigid-plastic"
std::string than(double moment, const char* law) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "more than the %.1f N mm/mm of %s", moment, law);
  return text.data();
}

} // namespace

double rigid_plastic_moment(const Sheet& sheet, const Material& material) {
  require(material.yield > 0, material, rigid_plastic, "yield");
  return plane_strain * material.yield * sheet.thickness * sheet.thickness / 4;
}

double power_law_moment(const Sheet& sheet, const Material& material) {
  require(material.K && material.n, material, power_law, "K and n");
  const double n = *material.n, K = *material.K * std::pow(plane_strain, n + 1);
  return K * std::pow(sheet.thickness, n + 2) / ((n + 2) * std::pow(2, n + 1) * std::pow(middle_radius(sheet), n));
}

void builtin_moment_laws(Registry<MomentLawEntry>& laws) {
  laws.add({rigid_plastic, "full plastic moment in plane strain, no hardening: (2/sqrt3) yield t^2/4",
            "Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, 2nd ed. 2002, sec. 6.5", rigid_plastic_moment});
  laws.add({power_law, "flow stress K strain^n in plane strain, by the bend radius",
            "Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, 2nd ed. 2002, eqs 6.13-6.14", power_law_moment});
}

ChosenLaw choose_law(const Sheet& sheet, const Material& material, const Registry<MomentLawEntry>& laws) {
  if (!sheet.moment_law.empty())
    return {sheet.moment_law, laws.get(sheet.moment_law).moment(sheet, material), "given in the case"};
  const bool yields = material.yield > 0, hardens = material.K && material.n;
  if (!yields && !hardens)
    throw std::invalid_argument("the moment of the sheet needs yield, or K and n, of material '" + material.name +
                                "'; give them, or a moment_law that does without");
  const double plastic = yields ? rigid_plastic_moment(sheet, material) : 0;
  const double hardened = hardens ? power_law_moment(sheet, material) : 0;
  if (!hardens) return {rigid_plastic, plastic, "K and n of " + material.name + " are not known"};
  if (!yields) return {power_law, hardened, "the yield of " + material.name + " is not known"};
  return hardened > plastic ? ChosenLaw{power_law, hardened, than(plastic, rigid_plastic)}
                            : ChosenLaw{rigid_plastic, plastic, than(hardened, power_law)};
}

double SheetLoads::lever(double angle) const {
  return flange + edge * std::cos(angle);
}

double SheetLoads::nose_lift(double angle) const {
  return apron(angle) * std::cos(angle) + grip;
}

SheetLoads sheet_loads(const Sheet& sheet, double moment, double edge) {
  return {moment, moment / sheet.grip, sheet.flange, edge};
}

double gardiner_ratio(double x) {
  return 4 * x * x * x - 3 * x + 1;
}

Springback springback(const Sheet& sheet, const Material& material, const std::string& law, double moment) {
  const double E = plane_strain_modulus(material), t = sheet.thickness, rho = middle_radius(sheet);
  double kept = 0; // angle of the arc after unloading over angle under load
  if (law == rigid_plastic) {
    require(material.yield > 0, material, rigid_plastic, "yield");
    const double x = rho * plane_strain * material.yield / (E * t);
    if (x < 0.5) kept = gardiner_ratio(x);
  } else {
    kept = 1 - 12 * moment * rho / (E * t * t * t);
  }
  if (!(kept > 0))
    throw std::invalid_argument("sheet: at this inside_radius the bend stays elastic and springs back entirely; give a "
                                "smaller inside_radius or a thicker sheet");
  const auto slope = [&](double length) { return 4 * moment * length / (E * t * t * t); };
  return {sheet.angle * (1 / kept - 1), slope(sheet.flange), slope(sheet.grip)};
}

Springback known_springback(const Machine& m, const Registry<MomentLawEntry>& laws) {
  if (!m.sheet || m.sheet->material < 0) return {};
  const Material& material = m.materials.at(static_cast<std::size_t>(m.sheet->material));
  if (!m.sheet->moment_law.empty() && !laws.find(m.sheet->moment_law)) return {};
  try {
    const ChosenLaw law = choose_law(*m.sheet, material, laws);
    const Springback found = springback(*m.sheet, material, law.name, law.moment);
    return std::isfinite(found.sum()) && found.sum() > 0 ? found : Springback{};
  } catch (const std::invalid_argument&) {
    return {}; // reported when the sheet is read, or when it is solved
  }
}

} // namespace bedbow
