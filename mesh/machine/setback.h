/// \file
/// How far behind the bend line the nose edge must be for the flange to pass. Derivation: docs/theory/sheet.md.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/si.h"

namespace bedbow {

/// Least set-back of the nose at a bend angle,
/// (t + max(r, R)) tan(angle / 2) - R: thickness t, inside radius r, radius R of the rounded nose edge.
/// At 90 deg that is t + r for a sharp edge, t + r - R for one rounded to less than the inside radius, and t for one
/// rounded to the inside radius or more, whose front then stands against the flange. Below 0 the nose may stand in
/// front of the bend line.
/// \param thickness, inside_radius, nose_radius [m] >= 0. \param angle of the bend [rad], 0 <= angle < pi.
/// \return y of the nose edge [m]. Source: geometry.
double least_setback(double thickness, double inside_radius, double nose_radius, double angle);

/// Default set-back of the nose: the least at 90 deg, or at the greatest required bend where that is more. 0 without a
/// sheet.
double default_setback(const Machine& machine);

/// Least permitted set-back [m]. Springback counts up to 90 deg only: swung further, the edge
/// presses into the bend by d^2 / (2 r) with d = (t + r) (tan(angle / 2) - 1), half a thousandth of a millimetre for
/// 0.7 deg at t = 1.5, r = 2 mm. \param springback [rad] >= 0.
double required_setback(const Machine& machine, double springback);

/// Greatest bend angle of any folder [rad].
inline constexpr double steepest_bend = 175 * si::degree;

/// Greatest required bend angle, wanted or in [solve] angles [rad], at most 175 deg. 0 without a sheet.
double greatest_angle(const Machine& machine);

} // namespace bedbow
