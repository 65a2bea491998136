/// \file
/// Hermite's cubics on an interval.
#pragma once

#include <Eigen/Core>

namespace bedbow {

/// Values and derivatives by x of the cubics of value and slope at the first end, then at the second. \param s = x / L
/// in [0, 1].
struct Hermite {
  Eigen::Vector4d value, slope, curvature;
  Hermite(double s, double L) {
    value << (1 + 2 * s) * (1 - s) * (1 - s), L * s * (1 - s) * (1 - s), s * s * (3 - 2 * s), L * s * s * (s - 1);
    slope << -6 * s * (1 - s) / L, (1 - s) * (1 - 3 * s), 6 * s * (1 - s) / L, s * (3 * s - 2);
    curvature << (12 * s - 6) / (L * L), (6 * s - 4) / L, (6 - 12 * s) / (L * L), (6 * s - 2) / L;
  }
};

} // namespace bedbow
