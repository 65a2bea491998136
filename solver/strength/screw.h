/// \file
/// Screws that join two bars: shear, tension from prying, both together, and bearing in the thinner bar.
#pragma once

#include "mesh/piece/fastener.h"
#include "solver/strength/allowable.h"

#include <vector>

namespace bedbow {

/// One screw of a row, threads in the shear plane. Lengths in m.
struct Screw {
  Thread thread;
  Grade grade;
  double plate_thickness = 0;                                            ///< of the thinner bar in bearing on the shank
  Material plate;                                                        ///< of that bar
  std::optional<double> allowed_shear, allowed_tension, allowed_bearing; ///< [N], [N], [Pa]
};

/// Shear load of one plane [N]: alpha fu A_s / 1.25, fu the class's nominal strength (800 MPa for 8.8), alpha 0.6 for
/// classes 4.6, 5.6, 8.8 and inch grades, 0.5 for 4.8, 5.8, 6.8, 10.9 and 12.9. Source: EN 1993-1-8 Table 3.4, which
/// stops at class 10.9.
double shear_resistance(const Thread& thread, const Grade& grade);

/// Tension load [N]: the lesser of 0.9 fu A_s / 1.25 (EN 1993-1-8 Table 3.4) and the proof load.
double tension_resistance(const Thread& thread, const Grade& grade);

/// Tension in a screw of a bar that tips about a heel: force outside the screw, moments about the heel.
/// \param force that lifts the bar [N]; \param force_arm, screw_arm distances from the heel [m], screw_arm > 0.
double prying_tension(double force, double force_arm, double screw_arm);

/// "screw shear", "screw tension" [N], "screw shear and tension" (V/V_R + T/(1.4 T_R) against 1, EN 1993-1-8 Table
/// 3.4) and "screw bearing" [Pa] (V/(d t) against 1.5 yield, EN 1993-1-8 Table 3.10).
/// \param preload additional tension besides `tension` [N].
std::vector<Check> check_screw(const Screw& screw, double shear, double tension, double preload = 0);

} // namespace bedbow
