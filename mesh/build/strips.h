/// \file
/// Flats that bend across their width: amplitude nodes and strip elements beside a bar's beam elements, and places on
/// them. Formulation: docs/theory/strips.md.
#pragma once

#include "mesh/build/mesh_builder.h"

#include <vector>

namespace bedbow {

/// Directions of a flat: along x, across its width, and normal to its middle plane.
struct FlatAxes {
  bool standing = false;
  /// Rows: along, across, normal.
  [[nodiscard]] Eigen::Matrix3d matrix() const;
};

/// A displacement of a section's own node that a function across shares, with its factor.
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
  [[nodiscard]] SharedDof movement() const { return {standing ? uy : uz, standing ? -1. : 1.}; }
  [[nodiscard]] SharedDof slope() const { return {standing ? rz : ry, -1}; }
  [[nodiscard]] SharedDof rotation() const { return {rx, width / 2}; }
  static constexpr int twist = 0;
  static int value(int function) { return 1 + 2 * (function - 2); }
  static int gradient(int function) { return value(function) + 1; }
  static int shear(int bending, int function) { return 1 + 2 * (bending - 2) + function; }
};

namespace mesher {

/// Whether a bar of the machine is meshed as a strip: a rectangle, in space, without a formulation of its own.
bool bends_across(const Machine& machine, const Bar& bar);

/// Adds amplitude nodes and strip elements to a bar that has its nodes and beam elements.
void add_strips(Builder& b, BarLayout& layout);

} // namespace mesher

/// Sums spots of a strip into one place.
class StripPlaceSum {
public:
  StripPlaceSum(const Machine& machine, const Mesh& mesh, const BarLayout& layout);
  /// A spot of the middle plane that represents `share` of the patch. \param c from the middle of the width.
  void add(double x, double c, double share);
  /// The place `at`, which a rigid arm joins to the patch's middle. Shares must add up to 1.
  [[nodiscard]] Place take(const Eigen::Vector3d& at, Frame frame) &&;

private:
  PlaceTerm& term(int node);
  const Mesh& mesh_;
  const BarLayout& layout_;
  const StripElement& strip_;
  Eigen::Matrix3d axes_; // along, across, normal
  Eigen::Vector3d origin_, middle_ = Eigen::Vector3d::Zero();
  std::vector<PlaceTerm> terms_;
};

} // namespace bedbow
