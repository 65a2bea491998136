#include "mesh/machine/bar_box.h"

#include <limits>
#include <stdexcept>

namespace bedbow {

double BarBox::distance(const Eigen::Vector2d& point) const {
  return (point - point.cwiseMax(lower).cwiseMin(upper)).norm();
}

std::optional<BarBox> shape_box(const Shape& shape, const Registry<ShapeEntry>& shapes) {
  const ShapeEntry* entry = shapes.find(shape.kind);
  if (!entry) return std::nullopt;
  try {
    const SectionProperties p = entry->make(shape, 0.3).props;
    if (!p.lower.allFinite() || !p.upper.allFinite()) return std::nullopt;
    return BarBox{p.lower, p.upper};
  } catch (const std::invalid_argument&) {
    return std::nullopt; // reported by the reader of the shape
  }
}

std::optional<BarBox> bar_box(const Bar& bar, const Registry<ShapeEntry>& shapes) {
  if (!bar.at.allFinite()) return std::nullopt;
  auto box = shape_box(bar.shape, shapes);
  if (box) {
    box->lower += bar.at;
    box->upper += bar.at;
  }
  return box;
}

int bar_nearest_bend_line(const Body& body, const Registry<ShapeEntry>& shapes) {
  constexpr double same = 1e-9;
  int best = -1;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < body.bars.size(); ++i) {
    const auto box = bar_box(body.bars[i], shapes);
    if (!box) continue;
    if (const double d = box->distance({0, 0}); d < least - same) {
      least = d;
      best = static_cast<int>(i);
    }
  }
  return best;
}

} // namespace bedbow
