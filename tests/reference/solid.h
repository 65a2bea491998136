/// \file
/// Blocks of linear elastic material with quadratic bricks of 27 nodes: as little as the referee needs, on GetFEM.
/// Millimetres, newtons, MPa. Nothing of bedbow is used here.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace referee {

using Point = std::array<double, 3>;

/// Axis-parallel box. A box that is flat in one direction names a patch of the surface there.
struct Box {
  Point lower, upper;
};

/// A force spread evenly over what lies in the box: over the volume, or over a patch of the surface.
struct SpreadForce {
  Box over;
  Point force; ///< [N]
};

/// Fixes directions of the node at a place.
struct Pin {
  Point at;
  std::array<bool, 3> directions;
};

struct Problem {
  std::array<std::vector<double>, 3> lines; ///< places where element edges must lie, by direction, ascending [mm]
  std::vector<Box> solid;                   ///< the body: union of boxes, their faces among the lines
  std::vector<SpreadForce> forces;
  std::vector<Box> clamped; ///< patches of the surface held in all directions
  std::vector<Pin> pins;
  double E = 210000, nu = 0.3;
};

/// Displacements at the nodes of one mesh.
struct Solution {
  int elements = 0, unknowns = 0;
  std::function<Point(const Point&)> at; ///< displacement of the node there; throws where there is none [mm]
};

/// Solves with elements no larger than `size` between the lines.
Solution solve(const Problem& problem, double size);

} // namespace referee
