#include "tests/unit/element/beam_samples.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

BeamLineLoad everything() {
  BeamLineLoad load;
  load.force = {300, -800, 1500};
  load.moment = {40, -25, 60};
  return load;
}

// Virtual work: nodal loads are the load's work on the exact shape functions. Composite Gauss of a quadratic rule.
TEST(BeamLoad, IsTheWorkOnTheShapeFunctions) {
  const double L = 0.9;
  const BeamLineLoad load = everything();
  const Vector6d q = (Vector6d() << load.force, load.moment).finished();
  for (const BeamData& d : {sample::bar(), sample::odd()}) {
    Vector12d f = Vector12d::Zero();
    const int parts = 4;
    for (int i = 0; i < parts; ++i)
      for (const double g : {-1 / std::sqrt(3.0), 1 / std::sqrt(3.0)})
        f += L / (2 * parts) * beam_shape(d, L, (i + 0.5 + g / 2) / parts).transpose() * q;
    const Vector12d exact = beam_load(d, L, load);
    EXPECT_LT((f - exact).cwiseAbs().maxCoeff(), 1e-11 * exact.cwiseAbs().maxCoeff());
  }
}

TEST(BeamLoad, IsInEquilibriumWithTheLineLoad) {
  const double L = 0.9;
  const BeamLineLoad load = everything();
  const Vector12d f = beam_load(sample::odd(), L, load);
  const Eigen::Vector3d force = f.segment<3>(0) + f.segment<3>(6);
  const Eigen::Vector3d moment = f.segment<3>(3) + f.segment<3>(9) + Eigen::Vector3d(L, 0, 0).cross(f.segment<3>(6));
  const Eigen::Vector3d wanted = L * load.moment + Eigen::Vector3d(L / 2, 0, 0).cross(L * load.force);
  EXPECT_LT((force - L * load.force).norm(), 1e-11 * load.force.norm());
  EXPECT_LT((moment - wanted).norm(), 1e-11 * wanted.norm());
}

// Shear flexibility leaves the fixed-end moments of a uniform force untouched: q L^2 / 12.
TEST(BeamLoad, FixedEndMomentsOfTheHandbook) {
  BeamLineLoad load;
  load.force = {0, 0, -100};
  const double L = 0.3;
  const Vector12d f = beam_load(sample::bar(), L, load);
  EXPECT_NEAR(f(2), -100 * L / 2, 1e-12);
  EXPECT_NEAR(f(4), 100 * L * L / 12, 1e-12);
  EXPECT_NEAR(f(10), -100 * L * L / 12, 1e-12);
}

} // namespace
} // namespace bedbow
