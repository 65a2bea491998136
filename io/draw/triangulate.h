/// \file
/// Triangles of a flat outline, for the end faces of bars.
#pragma once

#include <Eigen/Core>

#include <array>
#include <vector>

namespace bedbow {

/// Signed area of a closed loop of points, positive counter-clockwise (shoelace formula).
double signed_area(const std::vector<Eigen::Vector2d>& loop);

/// Triangles of a simple polygon with holes, by cutting ears; holes are first joined to the outside by a shortest free
/// bridge. Adds no points and uses every point, even on straight edges, so that the face matches its neighbours.
/// \param loops first the outside, counter-clockwise, then holes, clockwise; loops neither cross nor touch.
/// \return counter-clockwise triangles as indices into the points of all loops, numbered consecutively. Their areas
/// sum up to that of the outline. Source: Meisters, "Polygons have ears", 1975.
std::vector<std::array<int, 3>> triangulate(const std::vector<std::vector<Eigen::Vector2d>>& loops);

} // namespace bedbow
