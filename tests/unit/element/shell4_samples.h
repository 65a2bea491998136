// Quadrilaterals and plates that the shell's tests share.
#pragma once

#include "solver/element/shell4.h"

#include <Eigen/Geometry>

#include <vector>

namespace bedbow::shell_samples {

inline ShellData steel() {
  return {210e9, 0.3, 0.012, 7850};
}

/// Flat quadrilaterals in the x-y plane: square, slender, trapezoid, parallelogram, no two sides alike.
inline std::vector<Corners> flat() {
  const auto make = [](std::array<double, 8> v) {
    Corners c;
    for (std::size_t i = 0; i < 4; ++i) c[i] = {v[2 * i], v[2 * i + 1], 0};
    return c;
  };
  return {make({0, 0, .02, 0, .02, .02, 0, .02}), make({0, 0, .1, 0, .1, .01, 0, .01}),
          make({0, 0, .03, 0, .02, .02, .01, .02}), make({0, 0, .03, 0, .045, .02, .015, .02}),
          make({0, 0, .03, .002, .026, .02, -.003, .017})};
}

/// The same shape, turned about a skew axis and moved.
inline Corners turned(const Corners& c, const Eigen::Matrix3d& r) {
  Corners out;
  for (std::size_t i = 0; i < 4; ++i) out[i] = r * c[i] + Eigen::Vector3d(.3, -.1, .7);
  return out;
}
inline Eigen::Matrix3d skew_turn() {
  return Eigen::AngleAxisd(0.9, Eigen::Vector3d(1, -2, 0.5).normalized()).toRotationMatrix();
}

/// All samples, flat and turned, and one warped by a tenth of its side.
inline std::vector<Corners> all() {
  std::vector<Corners> out = flat();
  for (const Corners& c : flat()) out.push_back(turned(c, skew_turn()));
  Corners warped = turned(flat().back(), skew_turn());
  warped[2] += 0.002 * skew_turn().col(2);
  out.push_back(warped);
  return out;
}

/// Nodal movements of a movement field, (u, theta) by place.
template <class Field> Vector24d nodal(const Corners& c, const Field& field) {
  Vector24d u;
  for (std::size_t i = 0; i < 4; ++i) u.segment<6>(6 * static_cast<int>(i)) = field(c[i]);
  return u;
}

/// The six rigid movements.
inline Eigen::Matrix<double, 24, 6> rigid(const Corners& c) {
  Eigen::Matrix<double, 24, 6> r;
  for (int k = 0; k < 6; ++k)
    r.col(k) = nodal(c, [k](const Eigen::Vector3d& x) {
      Vector6d m = Vector6d::Zero();
      const Eigen::Vector3d d = Eigen::Vector3d::Unit(k % 3);
      if (k < 3)
        m.head<3>() = d;
      else
        m << d.cross(x), d;
      return m;
    });
  return r;
}

} // namespace bedbow::shell_samples
