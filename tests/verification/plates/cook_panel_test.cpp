// Cook's swept panel: in-plane bending and shear on distorted quadrilaterals.
#include "tests/verification/plates/shell_model.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

namespace bedbow::verification {
namespace {

double tip(int n) {
  ShellModel m(ShellData{1, 1.0 / 3, 1, 1});
  m.add_grid(n, n, [](double a, double b) { return Point(48 * a, 44 * a + b * (44 - 28 * a), 0); });
  m.hold_where([](const Point&) { return true; }, {2, 3, 4});
  m.hold_where([](const Point& p) { return p.x() < 1e-9; }, {0, 1, 5});
  std::vector<int> edge;
  for (int j = 0; j <= n; ++j) edge.push_back(j * (n + 1) + n);
  m.edge_load(edge, Point(0, 1.0 / 16, 0));
  m.solve();
  return m.u(m.nearest(Point(48, 52, 0)), 1);
}

TEST(CookPanel, TipMovement) {
  record("C18", "Cook, J. Struct. Div. ASCE 100 (1974)", "tip movement, 8 x 8 elements", tip(8), 23.97, 0.03);
  record("C18", "Cook, J. Struct. Div. ASCE 100 (1974)", "tip movement, 64 x 64 elements", tip(64), 23.97, 4e-3);
}

} // namespace
} // namespace bedbow::verification
