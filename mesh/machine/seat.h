/// \file
/// Seats: the patches of their parts on which joints act. Sizes are those on a plate's middle plane, to which the
/// contact spreads at 45 degrees: its own size and the plate's thickness more. See docs/theory/joints.md.
#pragma once

#include "mesh/machine/joint_place.h"
#include "mesh/machine/machine.h"

#include <array>
#include <utility>

namespace bedbow {

/// A spot of a seat this far from the elements of a part of the user's mesh lies beyond an edge or over a hole [m]. A
/// curved part is no further from the plane of its seat.
inline constexpr double off_the_part = 1e-3;

/// What a joint touches of the faces that it joins [m]; infinite: their whole width.
struct Contact {
  double along = 0;     ///< along x
  double across = 0;    ///< across it
  bool section = false; ///< holds a whole cross-section: no extent along x
};
Contact contact_of(const JointBase& joint); ///< of any other kind: a point
Contact contact_of(const Post& post);       ///< its washer
Contact contact_of(const Cam& cam);         ///< a line of its width
Contact contact_of(const Hinge& hinge);     ///< its pin in the bearing
Contact contact_of(const Handle& handle);   ///< a line across the whole width
Contact contact_of(const Screws& screws);   ///< their heads
Contact contact_of(const Support& support); ///< the whole section

/// The patch of a bar on which a joint acts.
struct BarSeat {
  double along = 0;  ///< size along x [m]
  double across = 0; ///< size along the wider side of the bar's section [m]
  double arm = 0; ///< length of the rigid arm that reaches from the bar to the joint; 0 where it stands on the bar [m]
  bool given = false; ///< the case gives the size
};

/// How far beside a bar a joint stands [m]: 0 within half the bar's thickness, where its contact spreads into the bar.
/// \param along_z the joint acts along z, so that its distance above or below the bar has no lever.
double arm_beside(const BarBox& box, const Eigen::Vector3d& at, bool along_z);

/// The seats of a joint on the bars it joins. A size in the case applies to the sides that it reaches by an arm, or to
/// both. Without it, a joint that stands on the bar has its contact and the bar's thickness more; one on an arm the
/// bar's wider side in both directions. On a beam a joint without a size acts at one section, by an arm as well.
/// \param boxes of the two sides; none for what is not a bar.
std::array<BarSeat, 2> bar_seats(const Machine& machine, const JointBase& joint, const Contact& contact, bool along_z,
                                 const SideBoxes& boxes, const Eigen::Vector3d& at);

/// Directions of a seat on a plate: along x as far as its plane goes, else along y; and across that. \return unit
/// vectors. \param normal of the plate, of any length.
std::pair<Eigen::Vector3d, Eigen::Vector3d> seat_directions(const Eigen::Vector3d& normal);

/// Whether joints of a kind act along z only, but for what holds them sideways.
bool acts_along_z(JointKind kind);

} // namespace bedbow
