#include "solver/linear/builtin.h"
#include "solver/linear/dense.h"
#include "solver/registry/registries.h"

#include "linear_matrices.h"
#include <gtest/gtest.h>

namespace bedbow {

// Every registered solver passes the same examination, against Eigen's dense one.
class LinearSolver : public testing::TestWithParam<std::string> {
protected:
  LinearSolver() { builtin_linear_solvers(solvers_); }
  [[nodiscard]] FactorOutcome factor(const SymmetricMatrix& a, const FactorHints& hints = {}) const {
    return solvers_.get(GetParam()).factor(a, hints);
  }
  Registry<LinearSolverEntry> solvers_{"linear solver"};
};

TEST_P(LinearSolver, SolvesPlatesAndLadders) {
  for (const SymmetricMatrix& a : {test::grid(9, 7, 6, 0.01), test::grid(40, 2, 3, 0.1),
                                   test::random_band(75, 11, 30, 4), test::random_band(1, 0, 2, 4)}) {
    const FactorOutcome outcome = factor(a);
    ASSERT_TRUE(outcome.factorization);
    EXPECT_EQ(outcome.zero_pivot, -1);
    EXPECT_EQ(outcome.factorization->size(), a.rows());
    EXPECT_EQ(outcome.factorization->negative_pivots(), 0);
    EXPECT_GT(outcome.factorization->bytes(), 0U);
    for (const int k : {0, 1, 3, 20}) {
      const Eigen::MatrixXd b = Eigen::MatrixXd::Random(a.rows(), k);
      const Eigen::MatrixXd reference = test::full(a).ldlt().solve(b);
      Eigen::MatrixXd x = b;
      outcome.factorization->solve(x);
      EXPECT_LE((x - reference).norm(), 1e-11 * reference.norm());
    }
    Eigen::SparseMatrix<double> b(a.rows(), 2);
    b.insert(a.rows() - 1, 0) = 1;
    b.insert(a.rows() / 2, 1) = -2;
    const Eigen::MatrixXd dense(b), reference = dense.transpose() * test::full(a).ldlt().solve(dense);
    EXPECT_LE((outcome.factorization->compliance(b) - reference).norm(), 1e-11 * reference.norm());
  }
}

TEST_P(LinearSolver, CountsNegativePivots) {
  SymmetricMatrix a = test::grid(8, 5, 4, 0.05);
  const Eigen::VectorXd values = symmetric_eigenvalues(test::full(a));
  int below = 5; // cut the spectrum in a wide gap
  for (int i = 6; i < 20; ++i)
    if (values[i] - values[i - 1] > values[below] - values[below - 1]) below = i;
  const double shift = 0.5 * (values[below] + values[below - 1]);
  for (int i = 0; i < a.rows(); ++i) a.coeffRef(i, i) -= shift;
  FactorHints hints;
  hints.positive = false;
  const FactorOutcome outcome = factor(a, hints);
  ASSERT_TRUE(outcome.factorization);
  EXPECT_EQ(outcome.factorization->negative_pivots(), below);
  const Eigen::MatrixXd b = Eigen::MatrixXd::Random(a.rows(), 3);
  Eigen::MatrixXd x = b;
  outcome.factorization->solve(x);
  EXPECT_LE((test::full(a) * x - b).norm(), 1e-9 * b.norm());
}

TEST_P(LinearSolver, NamesAnUnknownWithoutStiffness) {
  SymmetricMatrix a = test::grid(6, 5, 3, 0.1);
  for (int j = 0; j < a.cols(); ++j)
    for (SymmetricMatrix::InnerIterator it(a, j); it; ++it)
      if (it.row() == 31 || j == 31) it.valueRef() = 0;
  const FactorOutcome outcome = factor(a);
  EXPECT_FALSE(outcome.factorization);
  EXPECT_EQ(outcome.zero_pivot, 31);
}

TEST_P(LinearSolver, RefusesTheIndefiniteWherePositiveIsExpected) {
  SymmetricMatrix a = test::grid(6, 5, 3, 0.1);
  a.coeffRef(40, 40) = -3;
  EXPECT_FALSE(factor(a).factorization);
}

TEST_P(LinearSolver, TellsTheSameTwice) {
  const SymmetricMatrix a = test::grid(30, 12, 6, 0.02);
  const Eigen::MatrixXd b = Eigen::MatrixXd::Random(a.rows(), 2);
  Eigen::MatrixXd x = b, y = b;
  factor(a).factorization->solve(x);
  factor(a).factorization->solve(y);
  EXPECT_EQ(x, y);
}

TEST_P(LinearSolver, EmptyMatrix) {
  const FactorOutcome outcome = factor(SymmetricMatrix(0, 0));
  ASSERT_TRUE(outcome.factorization);
  Eigen::MatrixXd b(0, 2);
  outcome.factorization->solve(b);
}

INSTANTIATE_TEST_SUITE_P(Builtin, LinearSolver, testing::Values("auto", "band", "cholmod", "simplicial"),
                         [](const auto& info) { return info.param; });

} // namespace bedbow
