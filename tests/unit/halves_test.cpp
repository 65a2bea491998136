#include "solver/linear/halves.h"
#include "solver/linear/simplicial.h"

#include "tests/unit/linear_matrices.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

using test::grid;

// Long enough to be cut in two: 600 x 6 nodes of six unknowns.
TEST(Halves, SolvesLikeTheReferee) {
  const SymmetricMatrix a = grid(600, 6, 6, 1e-2);
  ASSERT_GE(a.rows(), 20000);
  FactorHints hints;
  hints.block = 6;
  const FactorOutcome f = halves_factor(a, hints), referee = simplicial_factor(a, hints);
  ASSERT_TRUE(f.factorization && referee.factorization);
  EXPECT_EQ(f.factorization->size(), a.rows());
  EXPECT_GT(f.factorization->bytes(), 0U);
  Eigen::MatrixXd x = Eigen::MatrixXd::Random(a.rows(), 3), y = x;
  const Eigen::MatrixXd b = x;
  f.factorization->solve(x);
  referee.factorization->solve(y);
  EXPECT_LT((x - y).norm(), 1e-9 * y.norm());
  EXPECT_LT((a.selfadjointView<Eigen::Lower>() * x - b).norm(), 1e-9 * b.norm());
}

TEST(Halves, IsTheSameToTheBitEachTime) {
  const SymmetricMatrix a = grid(600, 6, 6, 1e-2);
  Eigen::MatrixXd x = Eigen::MatrixXd::Ones(a.rows(), 1), y = x;
  halves_factor(a, {}).factorization->solve(x);
  halves_factor(a, {}).factorization->solve(y);
  EXPECT_EQ((x - y).cwiseAbs().maxCoeff(), 0);
}

TEST(Halves, NamesAnUnknownThatNothingHolds) {
  SymmetricMatrix a = grid(600, 6, 6, 1e-2);
  a.coeffRef(7, 7) = -1; // no stiffness left there
  const FactorOutcome f = halves_factor(a, {});
  EXPECT_FALSE(f.factorization);
  EXPECT_GE(f.zero_pivot, 0);
}

TEST(Halves, LeavesSmallAndIndefiniteMatricesToOthers) {
  const SymmetricMatrix a = grid(8, 6, 6, 1e-2);
  Eigen::MatrixXd x = Eigen::MatrixXd::Ones(a.rows(), 1);
  const FactorOutcome f = halves_factor(a, {});
  ASSERT_TRUE(f.factorization);
  f.factorization->solve(x);
  EXPECT_LT((a.selfadjointView<Eigen::Lower>() * x - Eigen::MatrixXd::Ones(a.rows(), 1)).norm(), 1e-9);
}

} // namespace
} // namespace bedbow
