/// \file
/// A value of a case split into number and unit, so that it can be written again.
#pragma once

#include "io/case/case_node.h"
#include "io/units/unit.h"

#include <optional>
#include <string>

namespace bedbow {

/// Number and unit of a value such as "12 mm".
struct NodeQuantity {
  double number = 0;
  std::string unit_text;
  Unit unit;
};

/// Whether a value is a number without a unit.
bool is_bare_number(const CaseNode& node);

/// Empty unless it is a string of one number and one known unit.
std::optional<NodeQuantity> quantity_of(const CaseNode& node);

} // namespace bedbow
