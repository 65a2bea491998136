/// \file
/// Bars that can be bought.
#pragma once

#include "mesh/machine/machine.h"

#include <optional>
#include <string>

namespace bedbow {

/// A bar that can be bought.
struct StockItem {
  std::string name;
  Shape shape;
  Material material;
  std::optional<double> price_per_metre, price_per_kg; ///< in any one currency
  std::optional<double> bar_length;                    ///< it is sold in [m]
  SourcePos pos;
};

} // namespace bedbow
