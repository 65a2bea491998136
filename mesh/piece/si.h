// Units that tables and texts are written in, in SI: value * si::mm is in metres, angle / si::degree in degrees.
#pragma once

#include <limits>
#include <numbers>

namespace bedbow::si {

inline constexpr double mm = 1e-3, inch = 0.0254;                        ///< [m]
inline constexpr double MPa = 1e6, GPa = 1e9, ksi = 6.894757293168361e6; ///< [Pa]
inline constexpr double degree = std::numbers::pi / 180;                 ///< [rad]

/// An angle in degrees. \param angle [rad]
constexpr double in_degrees(double angle) {
  return angle * (180 / std::numbers::pi);
}

} // namespace bedbow::si

namespace bedbow {

/// Marks a missing value.
inline constexpr double nan = std::numeric_limits<double>::quiet_NaN();

} // namespace bedbow
