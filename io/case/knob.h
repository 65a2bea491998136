/// \file
/// The quantities of a case that can be varied one at a time: sizes, places, stiffnesses, forces, moduli, coefficients.
#pragma once

#include "io/case/case_source.h"
#include "io/units/dimension.h"

#include <string>
#include <vector>

namespace bedbow {

/// One quantity of a case file.
struct Knob {
  std::string key; ///< dotted, of the value or of the list that holds it
  int item = -1;   ///< place in that list; -1: the value itself
  double si = 0;   ///< its value in SI base units
  bool length = false;
  /// "bed.bar.web.at[2]", counting from 1.
  [[nodiscard]] std::string name() const;
};

/// Every quantity with a unit that describes the machine or its sheet, and the bare numbers that are physical: nu, n,
/// friction (not counts, divisions and directions). Tables of settings (limits, solve, sweep, stock,
/// fit, output) and dials are excluded.
std::vector<Knob> knobs_of(const CaseSource& source);

/// The value of a quantity in SI base units. Throws std::invalid_argument where it is not a quantity.
double si_of(const CaseNode& value);

/// The case with one quantity at another value, written in the unit that it has, if any. \param si new value.
CaseSource turned(const CaseSource& source, const Knob& knob, double si);

/// A value with the unit of `like` and the SI value `si`.
CaseNode like_quantity(const CaseNode& like, double si);

} // namespace bedbow
