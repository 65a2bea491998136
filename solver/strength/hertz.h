/// \file
/// Hertz line contact: cams on their plates, cylinders on flats.
#pragma once

#include "solver/strength/allowable.h"

#include <limits>

namespace bedbow {

/// One of the two bodies. \param radius [m]; infinity for a flat, negative for a hollow.
struct ContactBody {
  double radius = std::numeric_limits<double>::infinity();
  double E = 0, nu = 0.3;
};

/// Line contact. F' force per length, 1/R = 1/R1 + 1/R2, 1/E* = sum (1 - nu^2)/E:
/// a = sqrt(4 F' R/(pi E*)), p0 = 2 F'/(pi a), greatest shear 0.3003 p0 at 0.7861 a below the surface.
/// Source: Hertz, as in Rao, Engineering Optimization, 4th ed., problem 5.5.
struct LineContact {
  double modulus = 0;    ///< E* [Pa]
  double half_width = 0; ///< a [m]
  double peak = 0;       ///< p0 [Pa]
  double shear = 0;      ///< greatest shear stress [Pa]
  double depth = 0;      ///< where that is, below the surface [m]
};

/// \param per_length force per length [N/m] >= 0. Throws std::invalid_argument where the bodies do not touch along a
/// line (1/R1 + 1/R2 <= 0) or a modulus is missing.
LineContact line_contact(double per_length, const ContactBody& one, const ContactBody& other);

/// Shear stress straight below the middle of the contact at depth z [m]: (p0/a) (z - z^2/sqrt(a^2 + z^2)).
double shear_below(const LineContact& contact, double z);

/// Peak pressure against first yield below the surface, p0 = yield / 0.6006 = 1.665 yield of the softer body (greatest
/// shear reaches yield/2, Tresca). \param yield of the softer body [Pa]; 0 unknown. \param own overrides [Pa].
Check check_line_contact(const LineContact& contact, double yield, std::optional<double> own = {});

} // namespace bedbow
