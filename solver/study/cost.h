/// \file
/// Cost of the bars of a machine, by the prices of the case's stock.
#pragma once

#include "mesh/machine/stock.h"
#include "mesh/piece/registry.h"

#include <span>
#include <string>
#include <vector>

namespace bedbow {

/// One bar or member to be cut.
struct CutPiece {
  std::string name;       ///< "bed.web", or the member's name
  std::string stock;      ///< stock it is cut from; empty where no size fits
  double length = 0;      ///< [m]
  double mass = 0;        ///< [kg]
  double cost = 0;        ///< NaN where its price is unknown
  bool estimated = false; ///< priced by weight, since its size is not in stock
};

struct MaterialCost {
  double total = 0;                  ///< NaN where a piece has no price
  std::vector<CutPiece> pieces;      ///< bars body by body, then members
  std::vector<std::string> unpriced; ///< names of pieces without a price
};

/// Whether a bar of this shape and material can be cut from the stock: same kind, sizes within a micrometre; a
/// rectangle or tube also with width and height exchanged. Shape::turn does not matter.
bool fits(const StockItem& item, const Shape& shape, const std::string& material);

/// Area of a section [m^2].
double section_area(const Shape& shape, const Registry<ShapeEntry>& shapes);

/// Price of one kilogram [1/kg], and of one metre [1/m], by either of the item's prices; NaN where it has none.
double price_per_kg(const StockItem& item, const Registry<ShapeEntry>& shapes);
double price_per_metre(const StockItem& item, const Registry<ShapeEntry>& shapes);

/// Cost of all bars and members. A bar whose size is in stock costs its length times the price per metre. One whose
/// size is not is priced by weight: like the stock of the same material that is nearest to it in area of section.
/// Panels, fasteners, fingers, cutting and waste are not counted.
MaterialCost material_cost(const Machine& machine, std::span<const StockItem> stock,
                           const Registry<ShapeEntry>& shapes);

} // namespace bedbow
