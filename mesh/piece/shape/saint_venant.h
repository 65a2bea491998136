/// \file
/// Saint-Venant torsion of a solid rectangle by its exact series.
#pragma once

namespace bedbow {

/// Torsion of a rectangle with sides a >= b.
struct RectangleTorsion {
  double J = 0;         ///< torsion constant [m^4]
  double tau_long = 0;  ///< shear stress at the middle of the long side, per torque [1/m^3]: the greatest
  double tau_short = 0; ///< at the middle of the short side [1/m^3]
};

/// J = a b^3 [1/3 - (64/pi^5)(b/a) sum tanh(n pi a/2b)/n^5],
/// tau_long = (b/J) [1 - (8/pi^2) sum 1/(n^2 cosh(n pi a/2b))],
/// tau_short = (b/J) (8/pi^2) sum (-1)^((n-1)/2) tanh(n pi a/2b)/n^2, n = 1, 3, 5, ...
/// Source: Timoshenko & Goodier, Theory of Elasticity, 3rd ed., art. 109. \param width, height [m] > 0, in any order.
RectangleTorsion rectangle_torsion(double width, double height);

} // namespace bedbow
