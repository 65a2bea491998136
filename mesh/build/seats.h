/// \file
/// Where the mesher puts the joints, and the patches of bars on which they act.
#pragma once

#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"
#include "mesh/machine/seat.h"

namespace bedbow::mesher {

/// The whole place of a joint: what the case omits is taken from the bars that it joins; see docs/case-format.md.
Eigen::Vector3d place_of(const Machine& m, const Mesh& mesh, const JointBase& joint, JointKind kind);

/// The seats of a joint at its place. \return by side; nothing for what is not a bar.
template <class J>
std::array<BarSeat, 2> seats_of(const Machine& m, const Mesh& mesh, const J& joint, JointKind kind,
                                const Eigen::Vector3d& at) {
  return bar_seats(m, joint, contact_of(joint), acts_along_z(kind), boxes_of(m, mesh, joint.joins), at);
}

/// The patch of a joint on a panel, a member or the user's mesh: its own size or, where the case gives none, its
/// contact spread into the middle plane.
Patch patch_of(const JointBase& joint, const Contact& contact);

/// The place of one side of a joint, on its seat. \param at of that side.
template <class J>
Place side_of(const Builder& b, const J& j, JointKind kind, std::size_t side, const Eigen::Vector3d& at) {
  const Ref& r = j.joins[side];
  if (r.kind == Ref::Kind::ground) return {{}, at, Frame::fixed};
  if (r.kind != Ref::Kind::bar) return place_on_structure(b.mesh, r, at, patch_of(j, contact_of(j)));
  BarSeat seat = seats_of(b.machine, b.mesh, j, kind, at)[side];
  // Screws are springs of the matrix: over more than two stations of a strip they would widen its band, for little.
  if (kind == JointKind::screw && b.machine.bar(r).model == BarModel::strip) seat.along = 0;
  return place_on_bar(b.machine, b.mesh, r, at, {seat.along, seat.across});
}

/// Sides of joints that stand on rigid arms and whose seats the case does not give.
struct ArmSide {
  JointKind kind = JointKind::post;
  std::size_t index = 0; ///< in the machine's list of its kind
  std::size_t side = 0;  ///< of its `joins`
  BarSeat seat;
};
std::vector<ArmSide> joints_on_arms(const Machine& m, const Mesh& mesh);

/// x where plates need stations so that seats cover two elements at least.
std::vector<double> seat_stations(const Builder& b);

/// Lines of a strip, from its centroid, at which its functions across need kinks: feet of bars that are welded or
/// screwed on, and points where forces stand. Lines within half a thickness of an edge, or of each other, need
/// none of their own.
AcrossLines strip_lines(const Builder& b, const BarLayout& layout);

/// Places across a plate bar, from its centroid, where joints need rows of nodes: at their places, and at the edges of
/// seats that would not cover two elements otherwise.
std::vector<double> seat_rows(const Builder& b, const BarLayout& layout);

} // namespace bedbow::mesher
