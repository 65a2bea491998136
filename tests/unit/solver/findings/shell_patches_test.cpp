#include "solver/findings/shell_patches.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <random>

namespace bedbow {

namespace {

constexpr double half_side = 0.06;

/// A square of quads from -half_side to half_side whose corners have n_xx = field(x, y).
ShellPatchMesh square(int across, const std::function<double(double, double)>& field) {
  ShellPatchMesh m;
  const auto at = [&](int i) { return half_side * (2.0 * i / across - 1); };
  for (int j = 0; j <= across; ++j)
    for (int i = 0; i <= across; ++i) m.points.emplace_back(at(i), at(j), 0);
  for (int j = 0; j < across; ++j)
    for (int i = 0; i < across; ++i) {
      const int k = j * (across + 1) + i;
      m.quads.push_back({k, k + 1, k + across + 2, k + across + 1});
      auto& corners = m.at_corners.emplace_back();
      for (std::size_t c = 0; c < 4; ++c) {
        const Eigen::Vector3d& p = m.points[m.quads.back()[c]];
        corners[c] = {{field(p.x(), p.y()), 1, 0}, {0, 0, 0}, {0, 0}};
      }
    }
  return m;
}

/// Mean at the middle.
double mean_at_middle(int across, double depth, const std::function<double(double, double)>& field) {
  const ShellPatchMesh mesh = square(across, field);
  const ShellResultants mean = ShellPatches(mesh, depth).around(static_cast<int>(mesh.points.size() / 2));
  EXPECT_NEAR(mean.n[1], 1, 1e-12);
  return mean.n[0];
}

} // namespace

// Where a force bends a plate to a kink in moment, the mean takes off what a disc as wide as the plate is thick does.
TEST(ShellPatches, AKinkLosesTheDiscsMeanDistance) {
  const double depth = 0.02;
  for (const int across : {12, 24, 48}) {
    EXPECT_NEAR(mean_at_middle(across, depth, [](double x, double) { return std::abs(x); }),
                2 * depth / (3 * std::numbers::pi), 0.02 * depth)
        << across;
    EXPECT_NEAR(mean_at_middle(across, depth, [](double x, double y) { return 3 * x - 2 * y; }), 0, 1e-15) << across;
  }
}

// The moment beside a point force goes with ln(1/r), and at the node grew with every finer mesh. Its mean is that of
// the weight 1 - (r/R)^2: ln(1/R) + 3/4.
TEST(ShellPatches, TheLogarithmOfAPointForceHasAMean) {
  const double depth = 0.02, radius = 5.0 / 8 * depth;
  const double exact = -std::log(radius) + 0.75;
  const auto field = [&](int across) {
    return [across](double x, double y) { // a node that stands on the force has what is a third of an element away
      return -std::log(std::max(std::hypot(x, y), half_side * 2 / across / 3));
    };
  };
  for (const int across : {24, 48, 96})
    EXPECT_NEAR(mean_at_middle(across, depth, field(across)), exact, 0.15) << across;
  EXPECT_NEAR(mean_at_middle(96, depth, field(96)), exact, 0.01);
}

// Elements many times the thickness: no piece of them lies within the patch, and the corners' mean stands.
TEST(ShellPatches, CoarseElementsKeepTheirCorners) {
  EXPECT_EQ(mean_at_middle(4, 0.0005, [](double x, double) { return x == 0 ? 7 : 1; }), 7);
}

// Only patches that can hold the greatest mean are looked at; looking at all of them finds the same.
TEST(ShellPatches, ThePeakIsTheGreatestOfAllMeans) {
  std::mt19937 random(7101);
  std::uniform_real_distribution<double> value(-1, 1);
  const auto stress = [](const ShellResultants& r) { return std::abs(r.n[0]); };
  for (const int across : {3, 8, 21})
    for (const double depth : {0.003, 0.02, 0.05})
      for (int trial = 0; trial < 20; ++trial) {
        const ShellPatchMesh mesh = square(across, [&](double x, double y) {
          return trial % 2 ? value(random) : std::cos(30 * x + trial) * y + (std::hypot(x, y) < 0.005 ? 0.1 : 0);
        });
        ShellPatches patches(mesh, depth);
        double most = 0;
        for (std::size_t p = 0; p < mesh.points.size(); ++p)
          most = std::max(most, stress(patches.around(static_cast<int>(p))));
        const PatchPeak peak = patch_peak(mesh, depth, stress);
        EXPECT_NEAR(peak.stress, most, 1e-8 * most) << across << " " << depth << " " << trial;
        ASSERT_GE(peak.point, 0);
        EXPECT_EQ(stress(patches.around(peak.point)), peak.stress);
      }
}

} // namespace bedbow
