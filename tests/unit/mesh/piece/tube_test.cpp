#include "mesh/piece/shapes.h"

#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

Section box() {
  Shape s;
  s.kind = "tube";
  s.width = 0.08;
  s.height = 0.05;
  s.wall = 0.004;
  return tube_section(s, 0.3);
}

// Points come in pairs: one in a wall y = const, one in a wall z = const.
bool in_web(std::size_t index) {
  return index % 2 == 0;
}

} // namespace

// What flows into a corner along one wall flows out along the other: shear flow has nowhere else to go.
TEST(Tube, FlowTurnsEveryCorner) {
  const Section s = box();
  for (const double y : {-0.04, 0.04})
    for (const double z : {-0.025, 0.025}) {
      Eigen::Vector3d inflow = Eigen::Vector3d::Zero(); // from Vy, Vz, T
      int walls = 0;
      for (std::size_t i = 0; i < s.points.size(); ++i) {
        const StressPoint& p = s.points[i];
        if (std::abs(p.y - y) > 1e-9 || std::abs(p.z - z) > 1e-9) continue;
        ++walls;
        if (in_web(i))
          inflow += std::copysign(1.0, z) * Eigen::Vector3d(p.tau_Vy.y(), p.tau_Vz.y(), p.tau_T.y());
        else
          inflow += std::copysign(1.0, y) * Eigen::Vector3d(p.tau_Vy.x(), p.tau_Vz.x(), p.tau_T.x());
      }
      EXPECT_EQ(walls, 2);
      EXPECT_NEAR(inflow.norm(), 0, 1e-9 * s.points[0].tau_T.norm());
    }
}

// Integrating the stress over the walls gives back the forces. The thick section's moment of inertia and the middle
// line's lengths differ by terms of (t/h)^2, here below 2 %.
TEST(Tube, StressAddsUpToItsForces) {
  const Section s = box();
  const double t = 0.004, across = 0.076, along = 0.046;
  double Vy = 0, Vz = 0, T = 0;
  for (std::size_t i = 0; i < s.points.size(); ++i) {
    const StressPoint& p = s.points[i];
    const bool middle = in_web(i) ? p.z == 0 : p.y == 0;
    const double share = (middle ? 4.0 : 1.0) / 6 * t * (in_web(i) ? along : across); // Simpson along each wall
    Vy += share * p.tau_Vy.x();
    Vz += share * p.tau_Vz.y();
    T += share * (std::copysign(in_web(i) ? across / 2 : 0, p.y) * p.tau_T.y() -
                  std::copysign(in_web(i) ? 0 : along / 2, p.z) * p.tau_T.x());
  }
  EXPECT_NEAR(Vy, 1, 0.02);
  EXPECT_NEAR(Vz, 1, 0.02);
  EXPECT_NEAR(T, 1, 1e-12);
}

} // namespace bedbow
