#include "solver/linear/multifrontal.h"
#include "solver/linear/simplicial.h"

#include "tests/unit/solver/linear/linear_matrices.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>

namespace bedbow {
namespace {

using test::grid;

void compare_solutions(const SymmetricMatrix& a) {
  const FactorOutcome f = multifrontal_factor(a, {}), referee = simplicial_factor(a, {});
  ASSERT_TRUE(f.factorization && referee.factorization);
  EXPECT_EQ(f.factorization->size(), a.rows());
  EXPECT_GT(f.factorization->bytes(), 0U);
  for (const int columns : {1, 3}) {
    const Eigen::MatrixXd b = Eigen::MatrixXd::Random(a.rows(), columns);
    Eigen::MatrixXd x = b, y = b;
    f.factorization->solve(x);
    referee.factorization->solve(y);
    EXPECT_LT((x - y).norm(), 1e-9 * y.norm());
    EXPECT_LT((a.selfadjointView<Eigen::Lower>() * x - b).norm(), 1e-9 * b.norm());
  }
}

TEST(Multifrontal, SolvesAStripWithCuts) {
  compare_solutions(grid(600, 6, 6, 1e-2));
}

TEST(Multifrontal, SolvesASquareAndALine) {
  compare_solutions(grid(25, 25, 6, 1e-2));
  compare_solutions(grid(500, 1, 2, 1e-2));
}

TEST(Multifrontal, SolvesWithoutGroupsOrCouplings) {
  compare_solutions(test::lower_of(Eigen::MatrixXd::Identity(7, 7) * 3));
  compare_solutions(test::random_band(900, 12, 30, 3));
}

// Several structures in one matrix, their unknowns in no order: a forest of fronts.
TEST(Multifrontal, SolvesPartsThatDoNotTouch) {
  const SymmetricMatrix a = grid(40, 20, 3, 1e-2), b = grid(90, 5, 3, 2e-2);
  const auto n = static_cast<int>(a.rows() + b.rows());
  std::vector<int> place(n);
  std::iota(place.begin(), place.end(), 0);
  std::shuffle(place.begin(), place.end(), std::mt19937(7));
  std::vector<Eigen::Triplet<double>> entries;
  const auto put = [&](const SymmetricMatrix& m, int shift) {
    for (int j = 0; j < m.cols(); ++j)
      for (SymmetricMatrix::InnerIterator it(m, j); it; ++it) {
        const int r = place[it.row() + shift], c = place[j + shift];
        entries.emplace_back(std::max(r, c), std::min(r, c), it.value());
      }
  };
  put(a, 0);
  put(b, static_cast<int>(a.rows()));
  SymmetricMatrix both(n, n);
  both.setFromTriplets(entries.begin(), entries.end());
  compare_solutions(both);
}

TEST(Multifrontal, IsTheSameToTheBitOnAnyNumberOfCores) {
  const SymmetricMatrix a = grid(400, 24, 6, 1e-2); // work for more than one core
  const auto solved = [&](int threads) {
    FactorHints hints;
    hints.threads = threads;
    Eigen::MatrixXd x = Eigen::MatrixXd::Ones(a.rows(), 1);
    multifrontal_factor(a, hints).factorization->solve(x);
    return x;
  };
  const Eigen::MatrixXd alone = solved(1);
  for (const int threads : {2, 2, 3, 5}) EXPECT_EQ((solved(threads) - alone).cwiseAbs().maxCoeff(), 0) << threads;
}

TEST(Multifrontal, NamesAnUnknownThatNothingHolds) {
  SymmetricMatrix a = grid(600, 6, 6, 1e-2);
  a.coeffRef(7, 7) = -1; // no stiffness left there
  const FactorOutcome f = multifrontal_factor(a, {});
  EXPECT_FALSE(f.factorization);
  EXPECT_GE(f.zero_pivot, 0);
}

} // namespace
} // namespace bedbow
