#include "solver/findings/certificate.h"

#include <gtest/gtest.h>

#include <limits>

namespace bedbow {
namespace {

Findings with_checks(double equilibrium, double residual) {
  Findings f;
  f.steps.resize(2);
  f.steps[0].name = "clamp";
  f.steps[1].name = "bend 0 deg";
  f.steps[1].checks.equilibrium = equilibrium;
  f.steps[1].checks.residual = residual;
  certify(f);
  return f;
}

TEST(Certificate, HoldsWithoutAWord) {
  const Findings f = with_checks(9e-10, 9e-10);
  EXPECT_EQ(f.status, Status::ok);
  EXPECT_TRUE(f.warnings.empty());
}

// 22 of 340 machines missed the promised 1e-9 and said nothing.
TEST(Certificate, BeyondThePromiseAWarning) {
  const Findings f = with_checks(0, 2e-9);
  EXPECT_EQ(f.status, Status::ok);
  ASSERT_EQ(f.warnings.size(), 1U);
  EXPECT_TRUE(f.warnings[0].starts_with("step bend 0 deg: the residual of K u = f is 2.0e-09 of f")) << f.warnings[0];
}

// A solver that answers nonsense left with exit 0 and a residual of 1 that nobody reads.
TEST(Certificate, BeyondBeliefNoAnswer) {
  const Findings f = with_checks(2e-6, 0);
  EXPECT_EQ(f.status, Status::inaccurate);
  EXPECT_TRUE(f.trouble.starts_with("step bend 0 deg: the equilibrium error is 2.0e-06 of the greatest force"))
      << f.trouble;
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(with_checks(nan, 0.5).status, Status::inaccurate);
  EXPECT_EQ(with_checks(0, nan).status, Status::inaccurate);
}

} // namespace
} // namespace bedbow
