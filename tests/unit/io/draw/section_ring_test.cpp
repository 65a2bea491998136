#include "io/draw/section_ring.h"
#include "io/draw/triangulate.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow {

namespace {

double face_area(const SectionRing& ring) {
  double area = 0;
  for (const auto& [a, b, c] : ring.triangles)
    area += signed_area({{ring.points[a].y, ring.points[a].z},
                         {ring.points[b].y, ring.points[b].z},
                         {ring.points[c].y, ring.points[c].z}});
  return area;
}

TEST(SectionRing, FaceHasTheSectionsArea) {
  for (const Section& s :
       {test::rectangle_section(0.016, 0.08), test::tube_section(0.05, 0.004), test::angle_section(0.05, 0.006)})
    EXPECT_NEAR(face_area(section_ring(s)), s.props.A, 1e-12 * s.props.A);
}

TEST(SectionRing, HolesMayComeEitherWayRound) {
  Section s = test::tube_section(0.05, 0.004);
  std::reverse(s.outline[1].begin(), s.outline[1].end());
  EXPECT_NEAR(face_area(section_ring(s)), s.props.A, 1e-12 * s.props.A);
}

TEST(SectionRing, LongEdgesAreSplitShortOnesStay) {
  // 16 x 80: the long sides in four, the short ones in two.
  EXPECT_EQ(section_ring(test::rectangle_section(0.016, 0.08)).points.size(), 12U);
  Section round = test::rectangle_section(0.02, 0.02);
  round.outline[0].clear();
  for (int i = 0; i < 40; ++i)
    round.outline[0].emplace_back(0.01 * std::cos(i * 0.15708), 0.01 * std::sin(i * 0.15708));
  EXPECT_EQ(section_ring(round).points.size(), 40U);
}

TEST(SectionRing, StressPointsKeepTheirShear) {
  const Section s = test::rectangle_section(0.02, 0.06);
  for (const StressPoint& p : section_ring(s).points) {
    // At mid-height of the sides the parabola peaks with 3/2 of the mean; at the corners it is zero.
    if (std::abs(p.z) < 1e-12 && std::abs(std::abs(p.y) - 0.01) < 1e-12) {
      EXPECT_NEAR(p.tau_Vz.y(), 1.5 / s.props.A, 1e-9 / s.props.A);
    }
    if (std::abs(std::abs(p.z) - 0.03) < 1e-12 && std::abs(std::abs(p.y) - 0.01) < 1e-12) {
      EXPECT_NEAR(p.tau_Vz.norm(), 0, 1e-9 / s.props.A);
    }
  }
}

TEST(SectionRing, StressOfAKnownCase) {
  const Section s = test::rectangle_section(0.02, 0.06);
  SectionForces f;
  f.My = 1000; // sigma = M z / I = 6 M / (b h^2) at the edge
  StressPoint edge;
  edge.z = 0.03;
  EXPECT_NEAR(ring_stress(s.props, edge, f).von_mises(), 6 * 1000 / (0.02 * 0.06 * 0.06), 1);
  const RingStress mixed{30, 40};
  EXPECT_NEAR(mixed.von_mises(), std::sqrt(900 + 3 * 1600.0), 1e-12);
  EXPECT_NEAR(mixed.principal()[0] + mixed.principal()[1], 30, 1e-12);
  EXPECT_NEAR(mixed.principal()[0] * mixed.principal()[1], -1600, 1e-9) << "determinant of the stress tensor";
}

TEST(SectionRing, WithoutOutlineTheAreaIsDrawn) {
  Section s;
  s.props.A = 4e-4;
  EXPECT_NEAR(face_area(section_ring(s)), 4e-4, 1e-12);
  s.props.lower = {-0.01, -0.02};
  s.props.upper = {0.01, 0.03};
  EXPECT_NEAR(face_area(section_ring(s)), 0.02 * 0.05, 1e-12);
}

} // namespace

} // namespace bedbow
