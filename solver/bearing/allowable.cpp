#include "solver/bearing/allowable.h"

#include <algorithm>
#include <array>

namespace bedbow {

namespace {

constexpr double GPa = 1e9, MPa = 1e6;
constexpr const char* roloff = "Roloff/Matek, sliding pin joints, slow (from memory)";
constexpr const char* practice = "common practice, no source";

struct Pair {
  Surface pin, hole;
  double pressure;
  const char* source;
};

constexpr std::array pairs{
    Pair{Surface::hardened_steel, Surface::hardened_steel, 15 * MPa, roloff},
    Pair{Surface::hardened_steel, Surface::bronze, 15 * MPa, roloff},
    Pair{Surface::hardened_steel, Surface::cast_iron, 5 * MPa, roloff},
    Pair{Surface::hardened_steel, Surface::steel, 10 * MPa, practice},
    Pair{Surface::steel, Surface::bronze, 10 * MPa, roloff},
    Pair{Surface::steel, Surface::cast_iron, 5 * MPa, roloff},
    Pair{Surface::steel, Surface::steel, 5 * MPa, practice},
    Pair{Surface::steel, Surface::hardened_steel, 10 * MPa, practice},
};

// What the softer partner bears against any metal.
Allowable by_softer(Surface s) {
  switch (s) {
  case Surface::timber:
    return {2 * MPa, practice};
  case Surface::polymer:
    return {10 * MPa, practice};
  default:
    return {5 * MPa, practice};
  }
}

} // namespace

Allowable overridden(std::optional<double> own, Allowable builtin) {
  return own ? Allowable{*own, "case"} : std::move(builtin);
}

std::string to_string(Surface surface) {
  switch (surface) {
  case Surface::steel:
    return "steel";
  case Surface::hardened_steel:
    return "hardened steel";
  case Surface::cast_iron:
    return "cast iron";
  case Surface::bronze:
    return "bronze";
  case Surface::aluminium:
    return "aluminium";
  case Surface::polymer:
    return "polymer";
  case Surface::timber:
    return "timber";
  }
  return "?";
}

Surface surface_of(const Material& material) {
  if (material.E >= 170 * GPa) return material.yield >= 900 * MPa ? Surface::hardened_steel : Surface::steel;
  if (material.E >= 90 * GPa) return Surface::bronze;
  if (material.E >= 60 * GPa) return Surface::aluminium;
  return material.yield > 0 ? Surface::polymer : Surface::timber;
}

Allowable swinging_pressure(Surface pin, Surface hole) {
  for (const Pair& p : pairs)
    if (p.pin == pin && p.hole == hole) return {p.pressure, p.source};
  for (const Surface soft : {Surface::timber, Surface::polymer})
    if (pin == soft || hole == soft) return by_softer(soft);
  return by_softer(hole);
}

Allowable resting_pressure(const Material& pin, const Material& hole) {
  double lesser = std::min(pin.yield, hole.yield);
  if (lesser == 0) lesser = std::max(pin.yield, hole.yield);
  if (lesser == 0) return {};
  return {0.6 * lesser, "0.6 yield, EN 1993-1-8 Table 3.10, replaceable pin (from memory)"};
}

Allowable seat_pressure(const Material& seat) {
  if (seat.yield > 0) return {seat.yield, "yield of what it presses on, common practice, no source"};
  if (seat.tensile > 0)
    return {0.065 * seat.tensile,
            "0.065 of the modulus of rupture, across the grain, USDA Wood Handbook (from memory)"};
  return {};
}

} // namespace bedbow
