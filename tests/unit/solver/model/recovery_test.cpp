#include "solver/model/recovery.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace bedbow {

// Statics along a loaded element against the element's own interpolation, unsymmetric section with its shear centre off
// the centroid. Both are exact, so they differ by rounding only.
TEST(Recovery, ForcesFurtherAlongAgreeWithTheElement) {
  BeamData data;
  data.E = 210e9;
  data.G = 80e9;
  data.section.A = 2e-3;
  data.section.Iyy = 3e-6;
  data.section.Izz = 1e-6;
  data.section.Iyz = 0.4e-6;
  data.section.J = 2e-7;
  data.section.Ay = 1.5e-3;
  data.section.Az = 1.2e-3;
  data.section.shear_centre = {0.004, -0.007};
  const double length = 0.3;
  Vector12d u;
  for (int i = 0; i < 12; ++i) u[i] = 1e-4 * std::sin(1.7 * i + 0.3);
  const BeamLineLoad load{{300, -2000, 5000}, {40, -25, 60}};
  const SectionForces first = beam_forces(data, length, u, load, 0);
  for (const double s : {0.25, 0.5, 1.0}) {
    const SectionForces whole = beam_forces(data, length, u, load, s);
    const SectionForces along = forces_further(data, load, first, s * length);
    const double force = 1e-9 * std::max(std::hypot(whole.Vy, whole.Vz), std::abs(whole.N));
    const double moment = force * length;
    EXPECT_NEAR(along.N, whole.N, force);
    EXPECT_NEAR(along.Vy, whole.Vy, force);
    EXPECT_NEAR(along.Vz, whole.Vz, force);
    EXPECT_NEAR(along.T, whole.T, moment);
    EXPECT_NEAR(along.My, whole.My, moment);
    EXPECT_NEAR(along.Mz, whole.Mz, moment);
  }
}

} // namespace bedbow
