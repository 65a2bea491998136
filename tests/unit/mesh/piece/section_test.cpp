#include "mesh/piece/section.h"
#include "mesh/piece/shapes.h"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

namespace bedbow {

namespace {
Section rectangle(double b, double h) {
  Shape s;
  s.width = b;
  s.height = h;
  return rectangle_section(s, 0.3);
}
} // namespace

TEST(DirectStress, SignsFollowTheHeader) {
  const Section s = rectangle(0.02, 0.06);
  const double W_y = 0.02 * 0.06 * 0.06 / 6, W_z = 0.06 * 0.02 * 0.02 / 6;
  EXPECT_NEAR(direct_stress(s.props, {.N = 1200}, 0, 0), 1e6, 1e-3);
  EXPECT_NEAR(direct_stress(s.props, {.My = 12}, 0, 0.03), 12 / W_y, 1e-3); // My stretches +z
  EXPECT_NEAR(direct_stress(s.props, {.Mz = 4}, 0.01, 0), -4 / W_z, 1e-3);  // Mz squeezes +y
}

// An unsymmetric section: integrating the stress over its area must give back the moments it was made from.
TEST(DirectStress, UnsymmetricBendingGivesBackItsMoments) {
  Shape shape;
  shape.kind = "angle";
  shape.width = 0.07;
  shape.height = 0.05;
  shape.wall = 0.008;
  const Section s = angle_section(shape, 0.3);
  const SectionForces f{5000, 0, 0, 0, 120, -45};
  double N = 0, My = 0, Mz = 0;
  const int n = 400; // cells per leg length; the corner of the section is at props.lower
  const auto add = [&](double y0, double z0, double w, double h) {
    const double dy = w / n, dz = h / n;
    for (int i = 0; i < n; ++i)
      for (int k = 0; k < n; ++k) {
        const double y = s.props.lower.x() + y0 + (i + 0.5) * dy, z = s.props.lower.y() + z0 + (k + 0.5) * dz;
        const double force = direct_stress(s.props, f, y, z) * dy * dz;
        N += force;
        My += force * z;
        Mz -= force * y;
      }
  };
  add(0, 0, 0.07, 0.008);
  add(0, 0.008, 0.008, 0.042);
  EXPECT_NEAR(N, f.N, 1e-6 * f.N);
  EXPECT_NEAR(My, f.My, 1e-4 * f.My);
  EXPECT_NEAR(Mz, f.Mz, 1e-4 * std::abs(f.Mz));
}

TEST(WorstVonMises, NamesThePoint) {
  const Section s = rectangle(0.02, 0.06);
  const auto [bending, at] = worst_von_mises(s, {.My = 12, .Mz = 4});
  EXPECT_NEAR(bending, 12 / 1.2e-5 + 4 / 4e-6, 1); // both bendings add up in a corner
  const StressPoint& p = s.points.at(static_cast<std::size_t>(at));
  EXPECT_LT(p.y * p.z, 0); // My stretches +z, Mz stretches -y
  const auto [shear, centre] = worst_von_mises(s, {.Vz = 1000});
  EXPECT_NEAR(shear, std::sqrt(3) * 1.5 * 1000 / 0.0012, 1);
  EXPECT_EQ(s.points.at(static_cast<std::size_t>(centre)).z, 0);
}

TEST(WorstVonMises, NoPointsNoStress) {
  EXPECT_EQ(worst_von_mises(Section{}, {.N = 1}), (std::pair<double, int>{0, -1}));
}

} // namespace bedbow
