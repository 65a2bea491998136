/// \file
/// Materials: those of the case, and the table of common ones by standard designation.
#pragma once

#include "mesh/piece/registry.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// A table that turns sheet gauge numbers into thicknesses.
struct GaugeTable {
  std::string name;                           ///< as `gauge` in a case calls it
  std::optional<double> (*inches)(int gauge); ///< none where the table has no such number
};

/// All gauge tables, in the order in which they are offered. Sources: mesh/piece/gauge.cpp.
const Registry<GaugeTable>& gauge_tables();

/// Yield of thicker stock: applies for thickness > above, up to the next step.
struct YieldStep {
  double above = 0; ///< thickness [m]
  double yield = 0; ///< [Pa]
};

/// Yield of sheets of one grade from coil to coil: what a standard allows or calls typical [Pa].
struct YieldRange {
  double least = 0, greatest = 0;
};

/// Isotropic material in SI units. A value of 0 means "unknown" where the member's comment says so.
struct Material {
  std::string name;
  double E = 0;            ///< Young's modulus [Pa] > 0
  double nu = 0.3;         ///< Poisson's ratio, -1 < nu < 0.5
  double G = 0;            ///< shear modulus [Pa] > 0
  double density = 0;      ///< [kg/m^3]; 0 unknown: no self-weight, no modes
  double yield = 0;        ///< [Pa]; 0 unknown: no utilisation
  double tensile = 0;      ///< [Pa]; 0 unknown
  std::optional<double> K; ///< hardening: flow stress = K strain^n [Pa]
  std::optional<double> n;
  std::optional<YieldRange> yield_range; ///< of sheet, where a source gives one
  const GaugeTable* gauge = nullptr;     ///< one of gauge_tables(); nullptr: none
  std::vector<YieldStep> thicker;        ///< where a standard lowers the yield of thick stock, ascending; usually empty
  std::string source; ///< standard or book the values come from, "from memory" where so, "case" for own ones
};

/// Built-in materials, sorted by name.
std::span<const Material> builtin_materials();

/// Built-in material of that designation, or nullptr. Exact match, case-sensitive.
const Material* find_material(std::string_view designation);

/// Yield [Pa] of a material at a thickness: its base value, or that of the last step of `thicker` that the thickness
/// exceeds (S275JR: 275 MPa up to 16 mm, 265 up to 40, 255 up to 63). \param thickness [m] > 0.
double yield_for_thickness(const Material& material, double thickness);

/// Sheet thickness [m] of a gauge number in a table.
/// \return nullopt where the table has no such number.
std::optional<double> gauge_thickness(const GaugeTable& table, int gauge);

} // namespace bedbow
