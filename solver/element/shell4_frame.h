/// \file
/// The flat quadrilateral inside a shell element: its own axes, corners projected on the mean plane, and the turn of
/// matrices and vectors between them and global axes. Arrays of doubles and plain loops, which compile and run fast.
#pragma once

#include "solver/element/shell4.h"

namespace bedbow::shell {

/// Corners in the element's axes, origin in their mean. Nodes counter-clockwise.
struct Quad {
  std::array<double, 4> x{}, y{};
  std::array<double, 4> z{}; ///< of each node above the mean plane; 0 where the four lie in one plane [m]
  Eigen::Matrix3d axes;      ///< rows: x, y, z (normal)
  double area = 0;           ///< [m^2]
};

/// Throws std::invalid_argument unless the corners make a convex quadrilateral, counter-clockwise about its normal.
Quad quad_of(const Corners& corners);

/// Bilinear shape functions and their derivatives at a point of the quadrilateral.
struct Shape4 {
  std::array<double, 4> n{}, dx{}, dy{}; ///< N, dN/dx, dN/dy
  double det = 0;                        ///< area per (xi, eta)
};
Shape4 shape4(const Quad& quad, double xi, double eta);

/// The 2 x 2 Gauss points in the order of the corners; all weights are 1.
inline constexpr double gauss2 = 0.57735026918962576451;
inline constexpr std::array<double, 4> corner_xi{-1, 1, 1, -1};
inline constexpr std::array<double, 4> corner_eta{-1, -1, 1, 1};

/// Element matrix (element's axes, dofs of the projected corners) in global axes at the nodes.
Matrix24d to_global(const Quad& quad, const Matrix24d& local);
/// Forces likewise.
Vector24d to_global(const Quad& quad, const Vector24d& local);
/// Global displacements of the nodes as displacements of the projected corners, element's axes.
Vector24d to_local(const Quad& quad, const Vector24d& global);

} // namespace bedbow::shell
