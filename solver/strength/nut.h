/// \file
/// Nuts of the posts: pressure under nut, head or washer, shear of the threads, and least thread engagement.
#pragma once

#include "mesh/piece/fastener.h"
#include "solver/strength/allowable.h"

namespace bedbow {

/// Annular bearing face of a nut or head. Lengths in m.
struct Seat {
  double outer = 0; ///< diameter of the bearing face
  double inner = 0; ///< of the hole
};

/// Seat of a hexagon nut: its flats, or the plain washer's share, see the other overload.
Seat nut_seat(const Thread& thread, bool with_washer);

/// Seat of a hexagon nut through a washer: the washer, but no wider than the flats and 1.6 washer thicknesses
/// (VDI 2230-1, step R10). \param washer_diameter, washer_thickness [m]
Seat nut_seat(const Thread& thread, double washer_diameter, double washer_thickness);

/// Force over the ring's area [Pa]. Throws std::invalid_argument unless outer > inner >= 0.
double seat_pressure_of(const Seat& seat, double force);

/// "nut seat": pressure against seat_pressure(material), or the case's own.
Check check_seat(const Seat& seat, double force, const Material& under, std::optional<double> own = {});

/// Strip load of the basic profile over that of real threads; common practice, no source.
inline constexpr double thread_reserve = 1.5;

/// Threads of screw and nut over an engaged length.
struct ThreadEngagement {
  Thread thread;
  double length = 0;        ///< engaged [m]
  double screw_tensile = 0; ///< [Pa]
  double nut_tensile = 0;   ///< of the nut, or of the tapped part [Pa]
};

/// "thread shear": force [N] against the lesser strip load of screw and nut, shear strength 0.6 tensile (common
/// practice), areas of the basic profile divided by `reserve` for tolerances and for the nut that widens under load.
Check check_thread_shear(const ThreadEngagement& engagement, double force, double reserve = thread_reserve,
                         std::optional<double> own = {});

/// Least engaged length [m] at which the screw breaks before its threads or the nut's strip.
double engagement_needed(const Thread& thread, double screw_tensile, double nut_tensile,
                         double reserve = thread_reserve);

} // namespace bedbow
