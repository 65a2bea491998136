#include "mesh/check/outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace bedbow {

Polygon outline_of(const Bar& bar, const Registry<ShapeEntry>& shapes) {
  const ShapeEntry* entry = shapes.find(bar.shape.kind);
  const bool sized = bar.shape.given.empty() || (bar.shape.width > 0 && bar.shape.height > 0);
  if (!entry || !bar.at.allFinite() || !sized) return {};
  try {
    const Section section = entry->make(bar.shape, 0.3);
    const Eigen::Vector2d &low = section.props.lower, &high = section.props.upper;
    Polygon out{{low.x(), low.y()}, {high.x(), low.y()}, {high.x(), high.y()}, {low.x(), high.y()}};
    if (!section.outline.empty()) out = section.outline.front();
    for (Eigen::Vector2d& p : out) p += bar.at;
    return std::ranges::all_of(out, [](const Eigen::Vector2d& p) { return p.allFinite(); }) ? out : Polygon{};
  } catch (const std::invalid_argument&) {
    return {}; // reported by the reader of the shape
  }
}

bool is_block(const Shape& s) {
  const double quarter = s.turn / (std::numbers::pi / 2);
  return std::abs(quarter - std::round(quarter)) < 1e-9 && (s.kind == "rectangle" || s.kind == "tube");
}

} // namespace bedbow
