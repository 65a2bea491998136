/// \file
/// Quantities: from "35 7/16 in" to metres, with a check that the unit is of the expected kind.
#pragma once

#include "io/units/dimension.h"
#include "io/units/unit.h"

#include <limits>
#include <optional>
#include <string>
#include <string_view>

namespace bedbow {

/// A value in SI base units, or what is wrong with its text.
struct ParsedQuantity {
  double value = std::numeric_limits<double>::quiet_NaN();
  std::string trouble; ///< what was found, what was expected, an accepted example; empty when it was understood
  [[nodiscard]] bool ok() const { return trouble.empty(); }
};

/// Reads number and unit, as in "900 mm", "35 7/16 in", "5/8 in", "1-1/2 in", "2.5 kN", "7850 kg/m^3".
/// \param due expected kind of quantity. \param example an accepted value for messages; the kind's own where empty.
/// \return SI value, finite and within what `info(due)` allows; or trouble.
ParsedQuantity parse_quantity(std::string_view text, Dim due, std::string_view example = "");

/// The gauge number of "16 ga" or "16 gauge"; nullopt where the text is not a gauge.
std::optional<int> parse_gauge(std::string_view text);

/// A unit alone, as in output.length = "mm". Trouble where it is not a unit of that kind.
Unit parse_unit_of(std::string_view text, Dim due);

/// Message for a bare number where a quantity is expected. \param number as the file has it.
std::string without_unit(std::string_view number, Dim due, std::string_view example = "");

} // namespace bedbow
