/// \file
/// Allowable values and their sources. Every allowable can be overridden; its source is then "case".
#pragma once

#include "mesh/piece/material.h"
#include "mesh/piece/quantity.h"

#include <optional>
#include <span>
#include <string>

namespace bedbow {

/// An allowable stress, pressure or force. 0 means unknown.
struct Allowable {
  double value = 0;   ///< [Pa], or [N], as the check's unit
  std::string source; ///< standard or book, "from memory" where so, "common practice, no source", "case"
};

/// The case's value where it gives one, else the built-in.
Allowable overridden(std::optional<double> own, Allowable builtin);

/// Consequence of exceeding a limit, the gravest first.
enum class Failure {
  breaks, ///< studs, screws, threads and pins part, bars buckle: at once and with force
  yields, ///< bars, pins and holes stay bent
  wears,  ///< seats, cams and holes are crushed or worn oval
  moves,  ///< parts tip or shift too far for small-displacement theory
  bows    ///< the bend line is crooked, the bend angle uneven
};

/// One comparison of an actual with an allowable value.
struct Check {
  std::string what;
  double actual = 0;
  Allowable allowed;
  Quantity unit = Quantity::stress;  ///< of both: [Pa], [N], or none
  Failure failure = Failure::breaks; ///< consequence of exceeding the allowable
  /// actual / allowed; 0 where the allowable is unknown.
  [[nodiscard]] double utilisation() const { return allowed.value > 0 ? actual / allowed.value : 0; }
};

/// The check with the highest utilisation; nullptr where there is none with a known allowable.
const Check* worst_check(std::span<const Check> checks);

/// Kind of surface, for sliding and pressure.
enum class BearingSurface { steel, hardened_steel, cast_iron, bronze, aluminium, polymer, timber };
std::string to_string(BearingSurface surface);

/// Guess from E and yield: 170 GPa and more steel (hardened from 900 MPa yield), 60-90 aluminium, 90-170 bronze, less
/// than 60 timber where no yield is known and polymer otherwise. Cast iron is never guessed.
BearingSurface surface_of(const Material& material);

/// Pressure on the projected area under which a hand-greased pin swings slowly without wearing its hole oval.
/// Source: Roloff/Matek, Maschinenelemente, table of mean pressures for sliding pin joints (from memory); pairs that it
/// omits: common practice, no source.
Allowable swinging_pressure(BearingSurface pin, BearingSurface hole);

/// Allowable pressure on the projected area of a pin at rest: 0.6 of the lesser yield, EN 1993-1-8 Table 3.10,
/// replaceable pin. Unknown where neither yield is known.
Allowable resting_pressure(const Material& pin, const Material& hole);

/// Pressure under a nut, head or washer: yield of a metal (common practice); across the grain of timber 0.065 of its
/// modulus of rupture, the low end of the Wood Handbook's species (from memory).
Allowable seat_pressure(const Material& seat);

} // namespace bedbow
