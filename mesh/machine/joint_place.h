/// \file
/// Places of joints: coordinates that the case omits are taken from where the two bars meet. See docs/case-format.md.
#pragma once

#include "mesh/machine/bar_box.h"
#include "mesh/machine/machine.h"

#include <array>
#include <optional>

namespace bedbow {

/// Boxes of the bars on the two sides of a joint; none for what is not a bar, or for a bar of unknown size.
using SideBoxes = std::array<std::optional<BarBox>, 2>;

/// Fills omitted y and z of a joint's place: the middle of the boxes' overlap, or of the gap where they do not overlap;
/// a bar's centroid where the other side has no box. An omitted x (NaN) becomes the middle of the common length.
/// \return the given place as it is where neither side has a box.
Eigen::Vector3d complete_place(const Machine& machine, const std::array<Ref, 2>& joins, const SideBoxes& boxes,
                               const GivenPoint& given);

/// The same for a joint of a kind: a hinge lies on the bend line unless the case says otherwise.
Eigen::Vector3d place_of(const Machine& machine, const JointBase& joint, JointKind kind, const SideBoxes& boxes);

} // namespace bedbow
