#include "mesh/piece/shape/thin_wall.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {
WallPath channel(double b, double h, double t) {
  return {{{b, 0}, {0, 0}, {0, h}, {b, h}}, t};
}
} // namespace

// Shear centre of a thin channel of one thickness: e = 3 b^2 / (h + 6 b) before the web's middle line.
// Source: Gere & Timoshenko, Mechanics of Materials, shear centre of a channel (from memory).
TEST(ThinWall, ChannelShearCentre) {
  for (const auto& [b, h] : {std::pair{0.05, 0.1}, {0.08, 0.06}, {0.02, 0.2}}) {
    const ThinWall w = thin_wall(channel(b, h, 0.002));
    EXPECT_NEAR(w.shear_centre.x(), -3 * b * b / (h + 6 * b), 1e-12);
    EXPECT_NEAR(w.shear_centre.y(), h / 2, 1e-12);
  }
}

TEST(ThinWall, AngleShearCentreIsItsCorner) {
  const ThinWall w = thin_wall({{{0.06, 0.01}, {0.01, 0.01}, {0.03, 0.09}}, 0.003});
  EXPECT_NEAR(w.shear_centre.x(), 0.01, 1e-12);
  EXPECT_NEAR(w.shear_centre.y(), 0.01, 1e-12);
}

// A flat strip on edge: V Q / I t is a parabola of 1.5 V/A, and its energy gives the shear area 5/6 A.
TEST(ThinWall, StripOnEdge) {
  const double h = 0.1, t = 0.004;
  // A slight bend keeps the small moment of inertia from vanishing.
  const ThinWall w = thin_wall({{{0, 0}, {1e-3, h / 2}, {0, h}}, t});
  EXPECT_NEAR(shear_flow(w, 0, 1).y() / (1.5 / h), 1, 1e-3);
  EXPECT_NEAR(w.Az / (5.0 / 6 * h * t), 1, 1e-3);
}

TEST(ThinWall, FlowAddsUpToTheShearForceAndEndsAtZero) {
  for (const WallPath& path : {channel(0.05, 0.1, 0.003), WallPath{{{0.06, 0}, {0, 0}, {0.01, 0.09}}, 0.004},
                               WallPath{{{-0.05, 0}, {0, 0}, {0, 0.1}, {0.05, 0.1}}, 0.003}}) {
    const ThinWall w = thin_wall(path);
    Eigen::Matrix2d sum = Eigen::Matrix2d::Zero(); // columns: force made by unit Vy, unit Vz
    for (std::size_t i = 0; i + 1 < path.nodes.size(); ++i) {
      const Eigen::Vector2d d = path.nodes[i + 1] - path.nodes[i];
      const Eigen::Vector2d mean =
          (shear_flow(w, i, 0) + 4 * shear_flow(w, i, 0.5) + shear_flow(w, i, 1)) / 6; // Simpson: exact for parabolas
      sum += d * mean.transpose();
    }
    EXPECT_NEAR((sum - Eigen::Matrix2d::Identity()).norm(), 0, 1e-12);
    EXPECT_NEAR(w.flow_at.back().norm() * 0.1, 0, 1e-12);
  }
}

} // namespace bedbow
