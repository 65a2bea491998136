#include "mesh/machine/joint_place.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Middle of the overlap of two intervals, or of the gap between them.
double meeting(double a0, double a1, double b0, double b1) {
  return (std::max(a0, b0) + std::min(a1, b1)) / 2; // overlap and gap are the same pair of inner ends
}

} // namespace

Eigen::Vector3d complete_place(const Machine& machine, const std::array<Ref, 2>& joins, const SideBoxes& boxes,
                               const GivenPoint& given) {
  Eigen::Vector3d at = given;
  const std::size_t first = boxes[0] ? 0 : 1, last = boxes[1] ? 1 : 0;
  if (!boxes[first]) return at;
  const Bar& a = machine.bar(joins[first]);
  const Bar& b = machine.bar(joins[last]);
  const BarBox &box_a = *boxes[first], &box_b = *boxes[last];
  if (!std::isfinite(at.x())) at.x() = meeting(a.start, a.end(), b.start, b.end());
  for (int k = 0; k < 2; ++k)
    if (!std::isfinite(at[k + 1]))
      at[k + 1] = first == last ? a.at[k] : meeting(box_a.lower[k], box_a.upper[k], box_b.lower[k], box_b.upper[k]);
  return at;
}

Eigen::Vector3d place_of(const Machine& machine, const JointBase& joint, JointKind kind, const SideBoxes& boxes) {
  GivenPoint given = joint.at;
  if (kind == JointKind::hinge)
    for (int k = 1; k < 3; ++k)
      if (!std::isfinite(given[k])) given[k] = 0;
  return complete_place(machine, joint.joins, boxes, given);
}

} // namespace bedbow
