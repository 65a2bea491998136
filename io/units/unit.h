/// \file
/// Units: from a text like "N/mm^2" to its size in SI base units and its dimension.
#pragma once

#include "io/units/dimension.h"

#include <span>
#include <string>
#include <string_view>

namespace bedbow {

/// A unit by its name.
struct UnitAtom {
  std::string_view name;
  double
      up; ///< size in SI base units (m, kg, s, rad) as a fraction up / down, so that 9 mm is the double nearest 0.009
  double down;
  Exponents exponents;
};

/// All units that have a name of their own. Sizes are exact by definition (international inch and avoirdupois pound,
/// standard gravity: NIST SP 811, appendix B).
std::span<const UnitAtom> unit_atoms();

/// A unit as a whole, or what is wrong with its text.
struct Unit {
  double up = 1, down = 1; ///< size in SI base units as a fraction
  Exponents exponents;
  std::string trouble; ///< empty when it was understood
  [[nodiscard]] bool ok() const { return trouble.empty(); }
  [[nodiscard]] double size() const { return up / down; }
  /// SI value of a count of this unit.
  [[nodiscard]] double si(double count) const { return count * up / down; }
};

/// Reads a product and quotient of named units with whole powers: "kg/m^3", "N*m/rad", "lbf-in", "N m", "mm2".
/// Everything after a slash up to the next operator is divided by. \param text in ASCII, see plain_ascii.
Unit parse_unit(std::string_view text);

/// Spellings of the trade in ASCII: "um" for micro sign m, "deg" for the degree sign, "^2" for a raised 2, "*" for a
/// raised dot, "-" for a typographic minus, " 1/2" for a one-half sign, plain spaces for fixed ones.
std::string plain_ascii(std::string_view text);

} // namespace bedbow
