#include "mesh/machine/usual_model.h"

#include <algorithm>

namespace bedbow {

BarModel usual_model(const Shape& shape, int dimension) {
  return shape.kind == "rectangle" && shape.turn == 0 && dimension == 3 ? BarModel::strip : BarModel::beam;
}

double usual_element_size(const Machine& m) {
  const auto has = [&](BarModel model) {
    return std::ranges::any_of(m.bodies, [&](const Body& b) {
      return std::ranges::any_of(b.bars, [&](const Bar& bar) { return bar.model == model; });
    });
  };
  const bool coarse = has(BarModel::strip) && !has(BarModel::plate) && m.panels.empty();
  return (coarse ? 2 : 1) * SolveSettings{}.element_size;
}

} // namespace bedbow
