/// \file
/// Studs of the posts in tension and bending, as when the clamp rocks on them.
#pragma once

#include "solver/strength/allowable.h"

#include <array>

namespace bedbow {

/// A round stud fixed at both ends. Lengths in m.
struct Stud {
  double diameter = 0;    ///< of the stressed section: that of the stress area for a thread
  double free_length = 0; ///< between the fixed ends
  double E = 0;           ///< [Pa]
};

/// Greatest moment [N m] in a stud whose ends move sideways against each other by `offset` [m] and turn against each
/// other by `tilt` [rad]: 6 E I offset / L^2 + 4 E I tilt / L. With `seat_follows` (spherical seat) the nut end turns
/// freely: 3 E I offset / L^2 and no moment from tilt.
double stud_moment(const Stud& stud, double offset, double tilt, bool seat_follows = false);

/// Relative displacement of the ends of a stud where it passes shear without moment: in its middle, or at the nut where
/// a spherical seat lets it turn. Each end carries a point rigidly to that place: `offset` is the distance of the two
/// points across the stud [m], `tilt` the relative rotation of the ends [rad]. Along two axes across: about the stud's
/// own y and x.
struct StudEnds {
  std::array<double, 2> offset{}; ///< along x, along y [m]
  std::array<double, 2> tilt{};   ///< about y, about x, each taken so that it moves the upper end along +x, +y [rad]
};

/// Greatest end moment [N m]: bending about either axis is one S-shaped part 6 E I offset / L^2, V L / 2 of the force V
/// across the stud, and one part of even moment E I tilt / L; with `seat_follows` 3 E I offset / L^2, V L, at the held
/// end.
/// Source: slope-deflection equations of a prismatic beam.
double stud_moment(const Stud& stud, const StudEnds& ends, bool seat_follows = false);

/// Greatest von Mises stress [Pa] of tension, shear and moment together: the direct stress N/A + M/W at the rim, where
/// round bars in shear carry none; or sqrt((N/A)^2 + 3 (4V/3A)^2) on the axis.
double stud_stress(const Stud& stud, double tension, double shear, double moment);

/// "stud": stress against yield. \param yield [Pa], 0 unknown.
Check check_stud(const Stud& stud, double tension, double shear, double moment, double yield,
                 std::optional<double> own = {});

} // namespace bedbow
