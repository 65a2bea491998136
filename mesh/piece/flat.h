/// \file
/// A flat bar that bends across its width: its axes, and which unknowns of a station belong to which function across.
/// Formulation: docs/theory/strips.md.
#pragma once

#include <Eigen/Core>

namespace bedbow {

/// Directions of a flat: along x, across its width, and normal to its middle plane.
struct FlatAxes {
  bool standing = false;
  /// Rows: along, across, normal.
  [[nodiscard]] Eigen::Matrix3d matrix() const;
};

/// A displacement of a section's own node that a function across shares, with its factor; by its number among ux uy uz
/// rx ry rz.
struct SharedDof {
  int dof = 0;
  double factor = 1;
};

/// Where the amplitudes of the functions across stand among a station's unknowns. W_0 is the node's movement along the
/// normal, W_0' its slope, phi_1's amplitude its rotation about x times half the width; all others are amplitudes, by
/// their number.
struct StripDofs {
  bool standing = false;
  double width = 0;
  [[nodiscard]] SharedDof movement() const { return {standing ? 1 : 2, standing ? -1. : 1.}; }
  [[nodiscard]] SharedDof slope() const { return {standing ? 5 : 4, -1}; }
  [[nodiscard]] SharedDof rotation() const { return {3, width / 2}; }
  static constexpr int twist = 0;
  static int value(int function) { return 1 + 2 * (function - 2); }
  static int gradient(int function) { return value(function) + 1; }
  static int shear(int bending, int function) { return 1 + 2 * (bending - 2) + function; }
};

/// What an element of a flat needs to know besides its section's constants.
struct FlatSection {
  bool standing = false; ///< the width is the section's height
  double thickness = 0;  ///< [m]
  int nodes = 0;         ///< nodes of six amplitudes at either end
};

} // namespace bedbow
