/// \file
/// A quarter of a rectangular plate a x b, its middle at the origin, with its edges simply supported, clamped or free.
#pragma once

#include "tests/verification/plates/shell_model.h"

#include <cmath>

namespace bedbow::verification {

enum class Edge { hard, soft, clamped, free };

/// Plate with D = 1 N m. Edges at x = a/2 and at y = b/2.
struct PlateCase {
  double a = 1, b = 1, thickness = 1e-3, nu = 0.3;
  Edge edge_x = Edge::hard, edge_y = Edge::hard;
  int nx = 16, ny = 16; ///< elements of the quarter
};

inline double modulus_for(const PlateCase& c) {
  return 12 * (1 - c.nu * c.nu) / std::pow(c.thickness, 3);
}

inline ShellModel quarter_plate(const PlateCase& c) {
  ShellModel m(ShellData{modulus_for(c), c.nu, c.thickness, 1});
  m.add_grid(c.nx, c.ny, [&](double x, double y) { return Point(x * c.a / 2, y * c.b / 2, 0); });
  const auto on = [](int k, double v) { return [k, v](const Point& p) { return std::abs(p[k] - v) < 1e-9; }; };
  m.hold_where([](const Point&) { return true; }, {0, 1, 5});
  m.hold_where(on(0, 0), {4});
  m.hold_where(on(1, 0), {3});
  const auto support = [&](Edge e, int k, double v, int tangential) {
    if (e == Edge::free) return;
    m.hold_where(on(k, v), {2});
    if (e == Edge::hard) m.hold_where(on(k, v), {tangential});
    if (e == Edge::clamped) m.hold_where(on(k, v), {3, 4});
  };
  // Along an edge x = const the tangential slope dw/dy is rx; along y = const it is -ry.
  support(c.edge_x, 0, c.a / 2, 3);
  support(c.edge_y, 1, c.b / 2, 4);
  return m;
}

/// Deflection of the middle under unit pressure.
inline double pressed(const PlateCase& c) {
  ShellModel m = quarter_plate(c);
  m.traction(Point(0, 0, 1));
  m.solve();
  return m.u(0, 2);
}

/// Deflection of the middle under a unit force there.
inline double pushed(const PlateCase& c) {
  ShellModel m = quarter_plate(c);
  m.force(0, 2, 0.25);
  m.solve();
  return m.u(0, 2);
}

} // namespace bedbow::verification
