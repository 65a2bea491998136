#include "mesh/piece/across.h"

#include <gtest/gtest.h>

namespace bedbow {
namespace {

constexpr double width = 0.12;

/// Integral over the width by the trapezoidal rule.
template <class F> double integral(F f) {
  constexpr int pieces = 2400;
  double sum = 0;
  for (int i = 0; i <= pieces; ++i)
    sum += (i == 0 || i == pieces ? 0.5 : 1) * f(width * (static_cast<double>(i) / pieces - 0.5));
  return sum * width / pieces;
}

TEST(Across, RigidFunctionsFirst) {
  const AcrossFunctions f(width, {{0.01}, {0.03}}, 3);
  for (const double c : {-0.06, -0.013, 0.0, 0.05}) {
    const AcrossValues v = f.at(c);
    EXPECT_NEAR(v.phi[0], 1, 1e-14);
    EXPECT_NEAR(v.phi[1], c / 0.06, 1e-14);
    EXPECT_NEAR(v.slope[1], 1 / 0.06, 1e-12);
    EXPECT_NEAR(v.curvature.head<2>().norm(), 0, 1e-10);
  }
}

TEST(Across, TheOthersAreOrthonormalWithoutMeanNorEdgeDifference) {
  const AcrossFunctions f(width, {{-0.01}, {0.03}}, 3);
  ASSERT_EQ(f.bending(), 7);
  for (int k = 2; k < f.bending(); ++k) {
    EXPECT_NEAR(integral([&](double c) { return f.at(c).phi[k]; }), 0, 1e-6); // of the rule: h^2 phi' / 12
    EXPECT_NEAR(f.at(width / 2).phi[k], f.at(-width / 2).phi[k], 1e-12);
    for (int l = 2; l <= k; ++l)
      EXPECT_NEAR(integral([&](double c) { return f.at(c).phi[k] * f.at(c).phi[l]; }) / width, k == l ? 1 : 0, 3e-5);
  }
}

TEST(Across, DerivativesAreThoseOfTheValues) {
  const AcrossFunctions f(width, {{0.01}, {0.035, -0.03}}, 4);
  constexpr double h = 1e-6;
  for (const double c : {-0.05, -0.02, 0.02, 0.055}) {
    const AcrossValues before = f.at(c - h), at = f.at(c), after = f.at(c + h);
    EXPECT_LT(((after.phi - before.phi) / (2 * h) - at.slope).norm(), 1e-6 * at.slope.norm());
    EXPECT_LT(((after.slope - before.slope) / (2 * h) - at.curvature).norm(), 1e-6 * at.curvature.norm());
    EXPECT_LT(((after.shear - before.shear) / (2 * h) - at.shear_slope).norm(), 1e-6 * at.shear_slope.norm());
  }
}

// At a foot the curvature may jump, at a point only its slope.
TEST(Across, KinksAreWhereTheLinesAre) {
  constexpr double foot = 0.01, point = 0.04, h = 1e-9;
  const AcrossFunctions f(width, {{foot}, {point}}, 3);
  const auto jump = [&](double c, auto member) {
    return (f.at(c + h).*member - f.at(c - h).*member).cwiseAbs().maxCoeff();
  };
  EXPECT_LT(jump(foot, &AcrossValues::slope), 1e-4);
  EXPECT_GT(jump(foot, &AcrossValues::curvature), 100);
  EXPECT_LT(jump(point, &AcrossValues::curvature), 0.1);
  EXPECT_GT(jump(point, &AcrossValues::shear_slope), 10);
}

TEST(Across, CountsUnknownsOfAStation) {
  EXPECT_EQ(AcrossFunctions(width, {}, 3).amplitudes(), 6);
  EXPECT_EQ(AcrossFunctions(width, {{}, {0.01}}, 3).amplitudes(), 9);
  EXPECT_EQ(AcrossFunctions(width, {{-0.02}, {0.01}}, 3).amplitudes(), 14);
}

TEST(Across, RefusesWhatItCannotDo) {
  EXPECT_THROW(AcrossFunctions(0, {}, 3), std::invalid_argument);
  EXPECT_THROW(AcrossFunctions(width, {}, 1), std::invalid_argument);
  EXPECT_THROW(AcrossFunctions(width, {}, 6), std::invalid_argument);
  EXPECT_THROW(AcrossFunctions(width, {{width / 2}, {}}, 3), std::invalid_argument);
}

} // namespace
} // namespace bedbow
