#include "solver/strength/allowable.h"

#include "mesh/piece/si.h"

#include <algorithm>
#include <array>

namespace bedbow {

namespace {

using si::GPa, si::MPa;
constexpr const char* roloff = "Roloff/Matek, sliding pin joints, slow (from memory)";
constexpr const char* practice = "common practice, no source";

struct Pair {
  BearingSurface pin, hole;
  double pressure;
  const char* source;
};

constexpr std::array pairs{
    Pair{BearingSurface::hardened_steel, BearingSurface::hardened_steel, 15 * MPa, roloff},
    Pair{BearingSurface::hardened_steel, BearingSurface::bronze, 15 * MPa, roloff},
    Pair{BearingSurface::hardened_steel, BearingSurface::cast_iron, 5 * MPa, roloff},
    Pair{BearingSurface::hardened_steel, BearingSurface::steel, 10 * MPa, practice},
    Pair{BearingSurface::steel, BearingSurface::bronze, 10 * MPa, roloff},
    Pair{BearingSurface::steel, BearingSurface::cast_iron, 5 * MPa, roloff},
    Pair{BearingSurface::steel, BearingSurface::steel, 5 * MPa, practice},
    Pair{BearingSurface::steel, BearingSurface::hardened_steel, 10 * MPa, practice},
};

// Pressure that the softer partner withstands against any metal.
Allowable by_softer(BearingSurface s) {
  switch (s) {
  case BearingSurface::timber:
    return {2 * MPa, practice};
  case BearingSurface::polymer:
    return {10 * MPa, practice};
  default:
    return {5 * MPa, practice};
  }
}

} // namespace

Allowable overridden(std::optional<double> own, Allowable builtin) {
  return own ? Allowable{*own, "case"} : std::move(builtin);
}

const Check* worst_check(std::span<const Check> checks) {
  const Check* worst = nullptr;
  for (const Check& c : checks)
    if (c.allowed.value > 0 && (!worst || c.utilisation() > worst->utilisation())) worst = &c;
  return worst;
}

std::string to_string(BearingSurface surface) {
  switch (surface) {
  case BearingSurface::steel:
    return "steel";
  case BearingSurface::hardened_steel:
    return "hardened steel";
  case BearingSurface::cast_iron:
    return "cast iron";
  case BearingSurface::bronze:
    return "bronze";
  case BearingSurface::aluminium:
    return "aluminium";
  case BearingSurface::polymer:
    return "polymer";
  case BearingSurface::timber:
    return "timber";
  }
  return "?";
}

BearingSurface surface_of(const Material& material) {
  if (material.E >= 170 * GPa)
    return material.yield >= 900 * MPa ? BearingSurface::hardened_steel : BearingSurface::steel;
  if (material.E >= 90 * GPa) return material.yield > 0 ? BearingSurface::bronze : BearingSurface::cast_iron;
  if (material.E >= 60 * GPa) return BearingSurface::aluminium;
  return material.yield > 0 ? BearingSurface::polymer : BearingSurface::timber;
}

Allowable swinging_pressure(BearingSurface pin, BearingSurface hole) {
  for (const Pair& p : pairs)
    if (p.pin == pin && p.hole == hole) return {p.pressure, p.source};
  for (const BearingSurface soft : {BearingSurface::timber, BearingSurface::polymer})
    if (pin == soft || hole == soft) return by_softer(soft);
  return by_softer(hole);
}

Allowable resting_pressure(const Material& pin, const Material& hole) {
  double lesser = std::min(pin.yield, hole.yield);
  if (lesser == 0) lesser = std::max(pin.yield, hole.yield);
  if (lesser == 0) return {};
  return {0.6 * lesser, "0.6 yield, EN 1993-1-8 Table 3.10, replaceable pin"};
}

Allowable seat_pressure(const Material& seat) {
  if (seat.yield > 0) return {seat.yield, "yield of the part under it, common practice, no source"};
  if (seat.tensile > 0)
    return {0.065 * seat.tensile,
            "0.065 of the modulus of rupture, across the grain, USDA Wood Handbook (from memory)"};
  return {};
}

} // namespace bedbow
