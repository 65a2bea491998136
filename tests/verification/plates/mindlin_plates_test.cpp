// Shear-flexible (Mindlin) plates, kappa = 5/6, against closed forms and series; and what MITC4 promises: no locking,
// second order.
#include "tests/verification/plates/plate_model.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <array>

namespace bedbow::verification {
namespace {

constexpr const char* mindlin_ritz = "Ritz's method with 3 x 14 x 14 Legendre polynomials, tests/reference/ritz.txt";
const std::array<double, 4> thick{0.01, 0.05, 0.1, 0.2};

PlateCase of(Edge e, double t, int n) {
  PlateCase c;
  c.edge_x = c.edge_y = e;
  c.thickness = t;
  c.nx = c.ny = n;
  return c;
}

std::string thickness_label(double t) {
  return "w middle / (q a^4 / D), t/a = " + std::to_string(t).substr(0, 4);
}

TEST(MindlinPlates, SimplySupportedHard) {
  const std::array<double, 4> w{0.00406446, 0.00411498, 0.00427284, 0.00490431};
  for (std::size_t i = 0; i < 4; ++i)
    record("B30", "Navier's series with shear", thickness_label(thick[i]), pressed(of(Edge::hard, thick[i], 24)), w[i],
           2e-3);
}

TEST(MindlinPlates, SimplySupportedSoft) {
  const std::array<double, 3> w{0.0042895, 0.0046169, 0.0055450};
  for (std::size_t i = 0; i < 3; ++i)
    record("B31", mindlin_ritz, thickness_label(thick[i + 1]), pressed(of(Edge::soft, thick[i + 1], 40)), w[i], 3e-3);
}

TEST(MindlinPlates, Clamped) {
  const std::array<double, 4> w{0.00126785, 0.00132726, 0.00150463, 0.00217216};
  for (std::size_t i = 0; i < 4; ++i)
    record("B32", mindlin_ritz, thickness_label(thick[i]), pressed(of(Edge::clamped, thick[i], 24)), w[i], 2e-3);
}

/// A quarter of a disc of radius 1 from three patches of quadrilaterals, none a rectangle.
ShellModel quarter_disc(double t, int n) {
  PlateCase c;
  c.thickness = t;
  ShellModel m(ShellData{modulus_for(c), c.nu, t, 1});
  const double s = 0.5, d = 0.4;             // inner block's corners
  m.add_grid(n, n, [&](double x, double y) { // inner block (0,0) (s,0) (d,d) (0,s)
    return Point(x * (1 - y) * s + x * y * d, y * (1 - x) * s + x * y * d, 0);
  });
  m.add_grid(n, n, [&](double x, double y) { // right: from the block's side outward, x outward, y along
    const Point in(s + y * (d - s), y * d, 0);
    const Point out(std::cos(y * M_PI / 4), std::sin(y * M_PI / 4), 0);
    return Point(in + x * (out - in));
  });
  m.add_grid(n, n, [&](double x, double y) { // upper: x along, y outward
    const Point in(x * d, s + x * (d - s), 0);
    const Point out(std::cos(M_PI / 2 - x * M_PI / 4), std::sin(M_PI / 2 - x * M_PI / 4), 0);
    return Point(in + y * (out - in));
  });
  m.merge_coincident();
  m.hold_where([](const Point&) { return true; }, {0, 1, 5});
  m.hold_where([](const Point& p) { return p.x() < 1e-9; }, {4});
  m.hold_where([](const Point& p) { return p.y() < 1e-9; }, {3});
  m.hold_where([](const Point& p) { return p.norm() > 1 - 1e-9; }, {2, 3, 4});
  return m;
}

TEST(MindlinPlates, ClampedDisc) {
  for (const double t : {0.01, 0.1, 0.2}) {
    ShellModel m = quarter_disc(t, 12);
    m.traction(Point(0, 0, 1));
    m.solve();
    record("B33", "closed form (q a^4 / 64 D)(1 + 16 t^2 / (5 (1 - nu) a^2))",
           "w middle, t/a = " + std::to_string(t).substr(0, 4), m.u(m.nearest(Point(0, 0, 0)), 2),
           (1 + 16 * t * t / (5 * 0.7)) / 64, 6e-3);
  }
}

// A 16 x 16 mesh of the whole plate from thick to thin: within 1 % of the series, which for the thinnest are those of
// thin plates.
TEST(MindlinPlates, DoNotLockFromThickToThin) {
  struct Row {
    double t, supported, clamped;
  };
  for (const Row& r : {Row{0.1, 0.00427284, 0.00150463}, Row{0.01, 0.00406446, 0.00126785},
                       Row{1e-3, 0.00406235, 0.00126532}, Row{1e-4, 0.00406235, 0.00126532}}) {
    char t[16];
    std::snprintf(t, sizeof t, "%g", r.t);
    record("B30", "Navier's series with shear", std::string("no locking, supported, t/a = ") + t,
           pressed(of(Edge::hard, r.t, 8)), r.supported, 0.01);
    record("B32", "converged series", std::string("no locking, clamped, t/a = ") + t,
           pressed(of(Edge::clamped, r.t, 8)), r.clamped, 0.01);
  }
}

// Halving the elements quarters the error.
TEST(MindlinPlates, DisplacementConvergesWithSecondOrder) {
  const double exact = 0.00427284;
  const auto error = [&](int n) { return std::abs(pressed(of(Edge::hard, 0.1, n)) / exact - 1); };
  const double rate = std::log2(error(4) / error(8));
  record("B30", "Bathe & Dvorkin 1985", "order of convergence of w", rate, 2, 0.05);
}

} // namespace
} // namespace bedbow::verification
