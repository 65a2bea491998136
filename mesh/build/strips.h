/// \file
/// Flats that bend across their width: amplitude nodes and strip elements beside a bar's beam elements, and places on
/// them. Formulation: docs/theory/strips.md.
#pragma once

#include "mesh/build/mesh_builder.h"
#include "mesh/piece/flat.h"

#include <vector>

namespace bedbow {

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
  /// The place `at`, which a rigid arm joins to the patch's middle; its first term is a node of the bar's own. Shares
  /// must add up to 1.
  [[nodiscard]] Place take(const Eigen::Vector3d& at, Frame frame) &&;

private:
  /// First of the terms of a station: its own node's, then those of its amplitude nodes.
  std::size_t terms_of(std::size_t station);
  const Mesh& mesh_;
  const BarLayout& layout_;
  const AcrossFunctions& functions_;
  StripDofs dofs_;
  int nodes_;                                                 ///< of amplitudes at a station
  Eigen::Matrix3d axes_;                                      ///< along, across, normal
  Eigen::Vector3d origin_, middle_ = Eigen::Vector3d::Zero(); ///< axes of the frame; the patch's middle in the flat's
  std::vector<PlaceTerm> terms_;                              ///< movements in the flat's axes
};

} // namespace bedbow
