#include "mesh/piece/material_table.h"
#include "mesh/piece/si.h"

namespace bedbow {

namespace {

using si::GPa, si::MPa;

struct Timber {
  const char* name;
  double bending_E;        // of the handbook [Pa]
  double G_over_E;         // mean of G_LR/E_L and G_LT/E_L
  double rupture, density; // [Pa], [kg/m^3] at 12 % moisture
  const char* source;
};

// Density is the handbook's specific gravity (oven-dry mass over volume at 12 %) times 1.12.
constexpr Timber species[] = {
    {"sugar maple", 12.6 * GPa, (0.111 + 0.063) / 2, 109 * MPa, 706,
     "USDA Wood Handbook Tables 5-1, 5-3a, 12 % moisture"},
    {"yellow birch", 13.9 * GPa, (0.074 + 0.068) / 2, 114 * MPa, 694,
     "USDA Wood Handbook, 12 % moisture; G ratios, rupture, density from memory"},
    {"Douglas-fir", 13.4 * GPa, (0.064 + 0.078) / 2, 85 * MPa, 538,
     "USDA Wood Handbook, coast, 12 % moisture; density from memory"},
    {"white oak", 12.3 * GPa, 0.086, 105 * MPa, 762,
     "USDA Wood Handbook, 12 % moisture (from memory); only G_LR is tabulated"},
    {"northern red oak", 12.5 * GPa, (0.089 + 0.081) / 2, 99 * MPa, 706,
     "USDA Wood Handbook, 12 % moisture (from memory)"},
    {"beech", 11.9 * GPa, 0.07, 103 * MPa, 717,
     "USDA Wood Handbook, American beech, 12 % moisture; rupture, density from memory; G = 0.07 E assumed as for "
     "birch, "
     "none tabulated"},
};

// True E_L over the modulus of a bending test with span 14 times depth, whose deflection holds shear (Wood Handbook
// ch. 5, from memory).
constexpr double shear_free = 1.10;

// No isotropic number fits timber; it only enters shear coefficients and plates.
constexpr double nominal_nu = 0.35;

Material make(const char* name, double E, double G, double rupture, double density, std::string source) {
  Material out;
  out.name = name;
  out.E = E;
  out.nu = nominal_nu;
  out.G = G;
  out.density = density;
  out.tensile = rupture;
  out.source = std::move(source);
  return out;
}

} // namespace

std::vector<Material> timber_materials() {
  std::vector<Material> out;
  for (const Timber& t : species) {
    const double E = shear_free * t.bending_E;
    out.push_back(make(t.name, E, t.G_over_E * E, t.rupture, t.density,
                       std::string(t.source) + "; E = 1.10 x bending E (from memory); nu nominal"));
  }
  out.push_back(make("birch plywood", 10 * GPa, 0.65 * GPa, 60 * MPa, 680,
                     "mean of the usual 9-11 GPa across lay-ups, low confidence (from memory); nu nominal"));
  return out;
}

} // namespace bedbow
