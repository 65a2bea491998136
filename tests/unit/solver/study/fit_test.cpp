#include "solver/study/fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace bedbow {
namespace {

// A cantilever on a spring: readings w(x) = F/k + F x^2 (3L - x)/(6EI), in closed form.
Eigen::VectorXd readings_on(const Eigen::VectorXd& v) {
  Eigen::VectorXd w(8);
  for (Eigen::Index i = 0; i < 8; ++i) {
    const double x = static_cast<double>(i + 1) / 8;
    w[i] = 100 / v[0] + 100 * x * x * (3 - x) / (6 * v[1]);
  }
  return w;
}

const Eigen::Vector2d truth(4e5, 7e4);

TEST(Fit, FindsWhatMadeTheReadings) {
  const FitResult r = fit({{"k", 1e5}, {"EI", 2e5}}, readings_on(truth), readings_on);
  ASSERT_TRUE(r.converged);
  EXPECT_NEAR(r.values[0].value, truth[0], 1e-6 * truth[0]);
  EXPECT_NEAR(r.values[1].value, truth[1], 1e-6 * truth[1]);
  EXPECT_LT(r.residuals.cwiseAbs().maxCoeff(), 1e-12);
  EXPECT_TRUE(r.alike.empty());
}

// Many sets of readings with known noise: the values scatter about the truth as their standard errors say (the mean of
// z^2 of 400 fits of 2 unknowns is 1 within 4 sqrt(2/400)).
TEST(Fit, StandardErrorsAreTheScatter) {
  std::mt19937 random(7);
  std::normal_distribution<double> noise(0, 5e-6);
  Eigen::Vector2d z2(0, 0);
  const int runs = 400;
  for (int i = 0; i < runs; ++i) {
    Eigen::VectorXd readings = readings_on(truth);
    for (Eigen::Index k = 0; k < readings.size(); ++k) readings[k] += noise(random);
    const FitResult r = fit({{"k", 3e5}, {"EI", 1e5}}, readings, readings_on, 5e-6);
    for (Eigen::Index k = 0; k < 2; ++k) {
      const FitValue& v = r.values[static_cast<std::size_t>(k)];
      z2[k] += std::pow((v.value - truth[k]) / v.error, 2) / runs;
    }
  }
  EXPECT_NEAR(z2[0], 1, 0.28);
  EXPECT_NEAR(z2[1], 1, 0.28);
}

// Two springs in series show only their sum; an unknown that no reading feels shows as such.
TEST(Fit, SaysWhatReadingsCannotTell) {
  const FitModel series = [](const Eigen::VectorXd& v) {
    return Eigen::VectorXd(Eigen::VectorXd::LinSpaced(5, 1, 2) * (100 / v[0] + 100 / v[1]));
  };
  Eigen::VectorXd readings = series(truth);
  readings[2] += 1e-6;
  const FitResult r = fit({{"one", 3e5}, {"other", 5e4}}, readings, series);
  ASSERT_EQ(r.alike.size(), 1U);
  EXPECT_GT(std::abs(r.alike[0].correlation), 0.999);
  const FitModel blind = [](const Eigen::VectorXd& v) {
    return Eigen::VectorXd(Eigen::VectorXd::LinSpaced(5, 1, 2) * (100 / v[0]));
  };
  readings = blind(truth);
  readings[2] += 1e-6;
  const FitResult b = fit({{"felt", 3e5}, {"not felt", 5e4}}, readings, blind);
  EXPECT_FALSE(b.values[0].undetermined);
  EXPECT_TRUE(b.values[1].undetermined);
  EXPECT_TRUE(std::isnan(b.values[1].error));
  EXPECT_NEAR(b.values[0].value, truth[0], 1e-2 * truth[0]);
}

TEST(Fit, StopsAtABound) {
  const FitResult r = fit({{"k", 1e5, 1e4, 2e5}, {"EI", 1e5}}, readings_on(truth), readings_on);
  EXPECT_TRUE(r.values[0].at_bound);
  EXPECT_DOUBLE_EQ(r.values[0].value, 2e5);
}

TEST(Fit, RefusesFewerReadingsThanUnknowns) {
  const Eigen::VectorXd one = Eigen::VectorXd::Constant(1, 1e-3);
  EXPECT_THROW(fit({{"k", 1e5}, {"EI", 1e5}}, one, readings_on), std::invalid_argument);
  EXPECT_THROW(fit({{"k", -1}}, one, readings_on), std::invalid_argument);
}

} // namespace
} // namespace bedbow
