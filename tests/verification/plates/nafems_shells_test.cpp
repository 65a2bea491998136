// The Standard NAFEMS Benchmarks, TNSB Rev. 3, 1990: elliptic membrane LE1 and Z-section cantilever LE5.
#include "tests/verification/plates/shell_model.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

TEST(NafemsLe1, EllipticMembrane) {
  const int around = 32, across = 24;
  ShellModel m(ShellData{210e9, 0.3, 0.1, 1});
  const int first = m.add_grid(across, around, [](double a, double b) {
    const double angle = b * M_PI / 2;
    const Point inner(2 * std::cos(angle), std::sin(angle), 0),
        outer(3.25 * std::cos(angle), 2.75 * std::sin(angle), 0);
    return Point(inner + a * a * (outer - inner)); // finer towards the hole
  });
  m.hold_where([](const Point&) { return true; }, {2, 3, 4});
  m.hold_where([](const Point& p) { return std::abs(p.y()) < 1e-9; }, {1, 5});
  m.hold_where([](const Point& p) { return std::abs(p.x()) < 1e-9; }, {0, 5});
  for (int j = 0; j < around; ++j) { // outward pressure on the outer edge
    const int a = first + j * (across + 1) + across, b = a + across + 1;
    const Point along = m.nodes()[b] - m.nodes()[a];
    m.edge_load({a, b}, Point(along.y(), -along.x(), 0).normalized() * 10e6 * 0.1);
  }
  m.solve();
  // At y = 0 the element's axes lean little against the global ones: turn its stress.
  const Vector24d u = m.element_motion(0);
  const auto r = shell_corner_resultants(m.corners(0), m.data(), u)[0];
  const Eigen::Matrix3d axes = shell_axes(m.corners(0));
  const double c = axes(0, 0), s = axes(0, 1);
  const double syy = s * s * r.n[0] + c * c * r.n[1] + 2 * c * s * r.n[2];
  record("D11", "NAFEMS TNSB Rev. 3, LE1", "sigma_yy at (2, 0)", syy / 0.1 / 1e6, 92.7, 0.01, "MPa");
}

TEST(NafemsLe5, ZSectionCantilever) {
  const int along = 40, wide = 4, high = 8;
  ShellModel m(ShellData{210e9, 0.3, 0.1, 1});
  // Web from z = 0 up to 2, flanges of 1 m to either side, so that the section is a Z.
  m.add_grid(along, high, [](double a, double b) { return Point(10 * a, 0, 2 * b); });
  m.add_grid(along, wide, [](double a, double b) { return Point(10 * a, -1 + b, 0); });
  m.add_grid(along, wide, [](double a, double b) { return Point(10 * a, b, 2); });
  m.merge_coincident();
  m.hold_where([](const Point& p) { return p.x() < 1e-9; }, {0, 1, 2, 3, 4, 5});
  // 0.6 MN in each flange's plane, a couple about x with an arm of 2 m.
  for (const double z : {0.0, 2.0}) {
    std::vector<int> edge;
    for (int k = 0; k <= wide; ++k) edge.push_back(m.nearest(Point(10, (z == 0 ? -1.0 : 0.0) + double(k) / wide, z)));
    m.edge_load(edge, Point(0, z == 0 ? -0.6e6 : 0.6e6, 0));
  }
  m.solve();
  const int tip = m.nearest(Point(2.5, -1, 0));
  record("D12", "NAFEMS TNSB Rev. 3, LE5", "sigma_xx, middle of the flange's tip, x = 2.5 m",
         m.at_node(tip).n[0] / 0.1 / 1e6, -108, 0.02, "MPa");
}

} // namespace
} // namespace bedbow::verification
