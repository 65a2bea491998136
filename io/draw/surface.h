/// \file
/// The machine of one step as closed surfaces with displacement and stress, for pictures and viewers. SI
/// units.
#pragma once

#include "solver/findings/findings.h"

#include <array>
#include <string>
#include <vector>

namespace bedbow {

/// Position and values of a point of the surface.
struct SurfacePoint {
  Eigen::Vector3d at;           ///< before displacement [m]
  Eigen::Vector3d displacement; ///< [m]
  Eigen::Vector3d rotation;     ///< [rad]
  double von_mises = 0;         ///< on the surface [Pa]
  double von_mises_middle = 0;  ///< plates: on the mid-plane; NaN for bars [Pa]
  double principal_1 = 0, principal_2 = 0;
  double utilisation = 0; ///< von Mises over yield; NaN when yield is unknown
};

/// A triangle (last index -1) or quadrilateral, seen from outside counter-clockwise.
using SurfaceCell = std::array<int, 4>;

/// One bar, member, plate bar or panel of the surface.
struct SurfacePart {
  std::string name, body;
  int first_point = 0, points = 0; ///< its range of Surface::points
  int first_cell = 0, cells = 0;   ///< its range of Surface::cells
};

struct Surface {
  std::vector<SurfacePoint> points;
  std::vector<SurfaceCell> cells;
  std::vector<SurfacePart> parts;
};

/// Adds a bar as its outline drawn along its stations, with end faces. A station where forces jump shows the greater
/// stress.
void add_bar(Surface& surface, const BarField& bar);

/// Adds a plate as a box of its thickness: top (along the normals), bottom, and sides around its edges.
void add_shell(Surface& surface, const ShellField& shell);

/// All bars, then all plates of a step.
Surface surface_of(const Fields& fields);

} // namespace bedbow
