// Curved shells of MacNeal & Harder 1985, as facets: the roof and the hemisphere.
#include "tests/verification/plates/shell_model.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

TEST(MacNealHarder, ScordelisLoRoof) {
  // A quarter: x along the axis from the diaphragm to the middle, angle from the crown to the free edge.
  const int n = 32;
  ShellModel m(ShellData{4.32e8, 0, 0.25, 1});
  m.add_grid(n, n, [](double a, double b) {
    const double angle = -b * 40 * M_PI / 180;
    return Point(25 * a, 25 * std::sin(angle), 25 * std::cos(angle));
  });
  const auto held = [&](const std::function<bool(const Point&)>& where, std::initializer_list<int> dofs) {
    m.hold_where(where, dofs);
  };
  held([](const Point& p) { return p.x() < 1e-9; }, {1, 2, 3});
  held([](const Point& p) { return p.x() > 25 - 1e-9; }, {0, 4, 5});
  held([](const Point& p) { return std::abs(p.y()) < 1e-9; }, {1, 3, 5});
  m.traction(Point(0, 0, -90));
  m.solve();
  const int edge = m.nearest(Point(25, -25 * std::sin(40 * M_PI / 180), 25 * std::cos(40 * M_PI / 180)));
  record("C13", "MacNeal & Harder 1985: 0.3024; refined 0.30202; thin shell 0.300601", "fall of the free edge's middle",
         -m.u(edge, 2), 0.3024, 1e-2);
}

TEST(MacNealHarder, HemisphereWithAHole) {
  const int n = 48;
  ShellModel m(ShellData{6.825e7, 0.3, 0.04, 1});
  m.add_grid(n, n, [](double a, double b) {
    const double around = a * M_PI / 2, up = b * 72 * M_PI / 180;
    return Point(10 * std::cos(up) * std::cos(around), 10 * std::cos(up) * std::sin(around), 10 * std::sin(up));
  });
  m.hold_where([](const Point& p) { return std::abs(p.y()) < 1e-9; }, {1, 3, 5});
  m.hold_where([](const Point& p) { return std::abs(p.x()) < 1e-9; }, {0, 4, 5});
  m.hold(0, {2});
  m.force(0, 0, 1);
  m.force(n, 1, -1);
  m.solve();
  record("C14", "MacNeal & Harder 1985: 0.0940; refined 0.093; thin shell 0.09352, derived",
         "radial movement at a force", m.u(0, 0), 0.09352, 1e-2);
}

} // namespace
} // namespace bedbow::verification
