/// \file
/// Polygons in the (y, z) plane: how deep one penetrates another.
#pragma once

#include <Eigen/Core>

#include <vector>

namespace bedbow {

/// Corners in order, either way round; the last is joined to the first. Need not be convex.
using Polygon = std::vector<Eigen::Vector2d>;

/// Distance of a point from the boundary where it is inside, else 0 [m].
double depth_inside(const Polygon& polygon, const Eigen::Vector2d& point);

/// A place where two polygons overlap.
struct Overlap {
  double depth = 0; ///< from the boundary of the one in which it lies [m]; 0: no overlap
  Eigen::Vector2d at = {0, 0};
};

/// The deepest of the corners of each within the other, and of the middles of the pieces into which the other's
/// boundary cuts each edge. So two polygons that only touch have no overlap.
Overlap overlap_of(const Polygon& a, const Polygon& b);

/// Upper bound of the depth of `overlap_of`, from the bounding boxes [m]; 0 or less: they do not meet. Faster than
/// `overlap_of`.
double box_overlap(const Polygon& a, const Polygon& b);

/// Least and greatest distance of a polygon from the origin; the least is 0 around it [m].
struct Reach {
  double least = 0, greatest = 0;
};
Reach reach_of(const Polygon& polygon);

/// Turned about the origin by the apron's angle [rad]: (-1, 0) goes to (-cos, sin).
Polygon swung(const Polygon& polygon, double angle);

/// The corner nearest to a point rounded to a radius [m], or as far as half of the shorter edge beside it allows.
Polygon rounded_corner(const Polygon& polygon, const Eigen::Vector2d& near, double radius);

} // namespace bedbow
