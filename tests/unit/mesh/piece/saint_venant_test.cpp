#include "mesh/piece/shape/saint_venant.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace bedbow {

namespace {

// Prandtl's stress function on a grid by successive over-relaxation: laplacian phi = -2, phi = 0 on the rim.
// An independent way to J = 2 integral phi and to the slope at the middle of each side.
struct Membrane {
  double J, slope_y_side, slope_z_side;
};
Membrane membrane(double width, double height, double h) {
  const auto ny = std::lround(width / h), nz = std::lround(height / h);
  std::vector<double> phi(static_cast<std::size_t>(ny + 1) * static_cast<std::size_t>(nz + 1), 0.0);
  const auto at = [&](long i, long k) -> double& { return phi[static_cast<std::size_t>(k * (ny + 1) + i)]; };
  const double omega = 2 / (1 + std::sin(M_PI / static_cast<double>(std::min(ny, nz))));
  for (long sweep = 0; sweep < 20 * nz; ++sweep)
    for (long k = 1; k < nz; ++k)
      for (long i = 1; i < ny; ++i) {
        const double next = (at(i - 1, k) + at(i + 1, k) + at(i, k - 1) + at(i, k + 1) + 2 * h * h) / 4;
        at(i, k) += omega * (next - at(i, k));
      }
  double sum = 0;
  for (const double value : phi) sum += value;
  // One-sided difference of second order.
  return {2 * sum * h * h, (4 * at(1, nz / 2) - at(2, nz / 2)) / (2 * h),
          (4 * at(ny / 2, 1) - at(ny / 2, 2)) / (2 * h)};
}

} // namespace

TEST(RectangleTorsion, AgreesWithAMembraneOnAGrid) {
  for (const double width : {0.5, 1.0, 2.0}) {
    const RectangleTorsion exact = rectangle_torsion(width, 1);
    const Membrane grid = membrane(width, 1, std::min(1.0, width) / 80);
    EXPECT_NEAR(grid.J / exact.J, 1, 1e-3) << width;
    const double y_side = grid.slope_y_side / grid.J, z_side = grid.slope_z_side / grid.J;
    EXPECT_NEAR((width <= 1 ? y_side : z_side) / exact.tau_long, 1, 2e-3) << width;
    EXPECT_NEAR((width <= 1 ? z_side : y_side) / exact.tau_short, 1, 2e-3) << width;
  }
}

TEST(RectangleTorsion, OrderOfSidesDoesNotMatter) {
  const RectangleTorsion a = rectangle_torsion(0.02, 0.07), b = rectangle_torsion(0.07, 0.02);
  EXPECT_EQ(a.J, b.J);
  EXPECT_EQ(a.tau_long, b.tau_long);
}

TEST(RectangleTorsion, SquareIsAlikeOnAllSides) {
  const RectangleTorsion t = rectangle_torsion(0.03, 0.03);
  EXPECT_NEAR(t.tau_short / t.tau_long, 1, 1e-12);
}

TEST(RectangleTorsion, VeryThinStripIsFinite) {
  const RectangleTorsion t = rectangle_torsion(1, 1e-5);
  EXPECT_NEAR(t.J / (1e-15 / 3), 1, 1e-4);
  EXPECT_NEAR(t.tau_long / (3 / 1e-10), 1, 1e-4);
}

} // namespace bedbow
