#include "tests/unit/element/beam_samples.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

std::array<bool, 12> free_dofs(std::initializer_list<int> dofs) {
  std::array<bool, 12> out{};
  for (const int d : dofs) out[d] = true;
  return out;
}

BeamLineLoad line_load() {
  BeamLineLoad load;
  load.force = {0, 200, -900};
  load.moment = {10, 20, -30};
  return load;
}

// Hinged end: stiffness 3EI/L (shear-flexible: 3EI/L / (1 + phi/4), phi = 12 EI / G Az L^2), carry-over gone.
TEST(BeamRelease, HingeLeavesThreeEIOverL) {
  BeamData d = sample::bar();
  const double L = 0.4, EI = d.E * d.section.Iyy, phi = 12 * EI / (d.G * d.section.Az * L * L);
  const Released r = beam_release(beam_stiffness(d, L), Vector12d::Zero(), free_dofs({10}));
  EXPECT_EQ(r.free_dof, -1);
  EXPECT_NEAR(r.stiffness(4, 4), 3 * EI / L / (1 + phi / 4), 1e-10 * r.stiffness(4, 4));
  EXPECT_EQ(r.stiffness.row(10).cwiseAbs().maxCoeff(), 0);
  EXPECT_EQ(r.stiffness.col(10).cwiseAbs().maxCoeff(), 0);
  EXPECT_LT((r.stiffness - r.stiffness.transpose()).cwiseAbs().maxCoeff(), 1e-9);
}

TEST(BeamRelease, PinnedAtBothEndsIsARod) {
  const BeamData d = sample::odd();
  const double L = 0.4;
  const Released r = beam_release(beam_stiffness(d, L), beam_load(d, L, line_load()), free_dofs({4, 5, 10, 11}));
  EXPECT_EQ(r.free_dof, -1);
  EXPECT_NEAR(r.stiffness(0, 0), d.E * d.section.A / L, 1e-6);
  EXPECT_LT(r.stiffness.block(1, 1, 2, 2).cwiseAbs().maxCoeff(), 1e-8 * r.stiffness(0, 0));
  // The line load goes to the ends by the lever: half the force each, and the moments' couple.
  EXPECT_NEAR(r.load(2), -900 * L / 2 + 20, 1e-9);
  EXPECT_NEAR(r.load(8), -900 * L / 2 - 20, 1e-9);
}

TEST(BeamRelease, RecoveredElementCarriesNothingAtTheReleases) {
  const BeamData d = sample::odd();
  const double L = 0.7;
  const Matrix12d K = beam_stiffness(d, L);
  const Vector12d f = beam_load(d, L, line_load());
  Vector12d u = 1e-3 * Vector12d::LinSpaced(-1, 2);
  for (const auto& released : {free_dofs({4, 5, 10, 11}), free_dofs({3, 4, 5}), free_dofs({0, 8, 11}),
                               free_dofs({0, 1, 2, 3, 4, 5}), free_dofs({})}) {
    const Released r = beam_release(K, f, released);
    ASSERT_EQ(r.free_dof, -1);
    const Vector12d full = beam_release_recover(K, f, released, u);
    const Vector12d nodal = K * full - f, condensed = r.stiffness * u - r.load;
    for (int i = 0; i < 12; ++i) {
      if (!released[i]) {
        EXPECT_EQ(full(i), u(i));
      }
      EXPECT_NEAR(nodal(i), released[i] ? 0 : condensed(i), 1e-9 * nodal.cwiseAbs().maxCoeff() + 1e-9) << i;
    }
  }
}

TEST(BeamRelease, NamesTheDofThatNothingHolds) {
  const Matrix12d K = beam_stiffness(sample::odd(), 0.5);
  const Vector12d f = beam_load(sample::odd(), 0.5, line_load());
  EXPECT_EQ(beam_release(K, f, free_dofs({3, 9})).free_dof, 9);      // spins about itself
  EXPECT_EQ(beam_release(K, f, free_dofs({0, 6})).free_dof, 6);      // slides along itself
  EXPECT_EQ(beam_release(K, f, free_dofs({2, 4, 8})).free_dof, 8);   // floats on one rotation
  EXPECT_EQ(beam_release(K, f, free_dofs({2, 4, 10})).free_dof, 10); // swings about a hinge at node 2
  EXPECT_EQ(beam_release(K, f, free_dofs({4, 5, 10, 11})).free_dof, -1);
  for (const double L : {1e-3, 0.5, 20.0}) { // however slender or stocky
    EXPECT_EQ(beam_release(beam_stiffness(sample::odd(), L), f, free_dofs({4, 5, 10, 11})).free_dof, -1) << L;
    EXPECT_EQ(beam_release(beam_stiffness(sample::odd(), L), f, free_dofs({2, 4, 8})).free_dof, 8) << L;
    EXPECT_EQ(beam_release(beam_stiffness(sample::odd(), L), f, free_dofs({0, 1, 2, 3, 4, 5})).free_dof, -1) << L;
  }
}

TEST(BeamRelease, AMechanismStaysFinite) {
  const Matrix12d K = beam_stiffness(sample::odd(), 0.5);
  const Vector12d f = beam_load(sample::odd(), 0.5, line_load());
  const auto all = free_dofs({0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11});
  const Released r = beam_release(K, f, all);
  EXPECT_GE(r.free_dof, 0);
  EXPECT_EQ(r.stiffness.norm(), 0);
  EXPECT_TRUE(beam_release_recover(K, f, all, Vector12d::Ones()).allFinite());
}

} // namespace
} // namespace bedbow
