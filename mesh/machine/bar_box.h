/// \file
/// Extent of a bar's cross-section.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/registry.h"

#include <Eigen/Core>

#include <optional>

namespace bedbow {

/// Bounding box of a cross-section in (y, z), absolute [m].
struct BarBox {
  Eigen::Vector2d lower, upper;
  /// Distance of a point from the box; 0 inside [m].
  [[nodiscard]] double distance(const Eigen::Vector2d& point) const;
};

/// Bounding box of a bar's section about its own centroid; nullopt where the shape is not known or can't be made.
std::optional<BarBox> shape_box(const Shape& shape, const Registry<ShapeEntry>& shapes);

/// Bounding box of a bar where it lies; nullopt also where its place is unknown.
std::optional<BarBox> bar_box(const Bar& bar, const Registry<ShapeEntry>& shapes);

/// Index of the body's bar nearest to the bend line (y = 0, z = 0), the first of equals; -1 where no bar has a box.
int bar_nearest_bend_line(const Body& body, const Registry<ShapeEntry>& shapes);

} // namespace bedbow
