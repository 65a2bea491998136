/// \file
/// Cold bending of flat sheet by the rules of DIN 6935: stretched length, least inside radius, angle tolerance.
/// Equations and sources: docs/theory/sheet.md.
#pragma once

#include "mesh/piece/material.h"
#include "solver/strength/allowable.h"

namespace bedbow {

/// Correction factor of the neutral line, k = 0.65 + 0.5 lg(r/s), 1 from r/s = 5 on; the line lies k s/2 from the
/// inside (the customary "K-factor" is k/2). Never below 0. \param r inside radius, \param s thickness, same unit.
/// Source: DIN 6935. Throws std::invalid_argument unless r >= 0 and s > 0.
double din6935_k(double r, double s);

/// Correction to the sum of the outside legs for the flat length, usually negative [m].
/// beta = pi - bend is the opening angle: v = (pi - beta)(r + k s/2) - 2 (r + s) for beta <= 90 deg, with the tangent
/// tan((pi - beta)/2) on the last term up to 165 deg, and 0 above. Legs up to 90 deg of opening are measured to the
/// tangent of the outside curve, above to the outside apex. Source: DIN 6935.
/// \param bend angle by which the sheet is bent [rad], 0 to pi. Throws std::invalid_argument outside.
double din6935_correction(double bend, double r, double s);

/// Flat length [m] of a strip with one bend and outside legs a and b [m].
double flat_length(double a, double b, double bend, double r, double s);

/// Least inside radius [m] for a bend of at most 120 deg across the rolling direction.
/// Steel up to 640 MPa tensile and 20 mm by DIN 6935 (1975-10); 5052-H22/H32 up to 6 mm by EN 485-2.
/// \return no value where neither table holds, with the reason as source.
Allowable least_inside_radius(const Material& material, double thickness);

/// Tolerance of the angle [rad], plus or minus, by the shorter leg [m]. Source: DIN 6935 (from memory, low confidence
/// above the first step).
Allowable angle_tolerance(double shorter_leg);

} // namespace bedbow
