#include "solver/linear/dense.h"
#include "solver/modes/eigen/block_steps.h"
#include "solver/modes/eigen/eigenpairs.h"

#include <gtest/gtest.h>

namespace bedbow {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// A^-1 G u = nu u with given nu in descending order: A = B'^-1 B^-1 and G = A U diag(nu) U' A for U = B Q.
struct Known {
  explicit Known(VectorXd nu)
      : values(std::move(nu)) {
    std::srand(1);
    const Index n = values.size();
    const MatrixXd any = MatrixXd::Random(n, n);
    const MatrixXd q = symmetric_eigen(any).vectors; // some orthonormal columns
    const MatrixXd skew = MatrixXd::Identity(n, n) + 0.2 * MatrixXd::Random(n, n) / std::sqrt(n);
    compliance = skew * skew.transpose(); // A^-1
    a = solve_dense(compliance, MatrixXd::Identity(n, n));
    vectors = skew * q; // U' A U = I
    g = a * vectors * values.asDiagonal() * vectors.transpose() * a;
  }
  [[nodiscard]] EigenProblem problem() const {
    EigenProblem p;
    p.size = values.size();
    p.g = [this](const auto& x, auto y) { y = g * x; };
    p.inner = [this](const auto& x, auto y) { y = a * x; };
    p.inverse = [this](auto b) { b = (compliance * b).eval(); };
    return p;
  }
  VectorXd values;
  MatrixXd compliance, a, g, vectors;
};

/// 1, 1/2, 1/3, ... with some values taken several times.
VectorXd spectrum(Index n, std::initializer_list<std::pair<Index, Index>> repeats = {}) {
  VectorXd nu = VectorXd::LinSpaced(n, 1, static_cast<double>(n)).cwiseInverse();
  for (const auto& [first, times] : repeats) nu.segment(first, times).setConstant(nu[first]);
  return nu;
}

void expect_found(const Known& k, int wanted) {
  const EigenPairs pairs = largest_pairs(k.problem(), wanted, MatrixXd(k.values.size(), 0));
  ASSERT_EQ(pairs.values.size(), wanted);
  for (int i = 0; i < wanted; ++i) EXPECT_NEAR(pairs.values[i], k.values[i], 1e-10) << i;
  EXPECT_LT(pairs.residual, 1e-7);
  EXPECT_LT(pairs.orthogonality, 1e-10);
  const MatrixXd left = k.g * pairs.vectors - k.a * pairs.vectors * pairs.values.asDiagonal();
  EXPECT_LT(left.norm(), 1e-7);
}

TEST(Eigenpairs, FindsAKnownSpectrum) {
  for (const Index n : {20, 79, 81, 200}) expect_found(Known(spectrum(n)), 7); // dense and Lanczos
}

TEST(Eigenpairs, FindsRepeatedValuesAsOftenAsTheyAre) {
  expect_found(Known(spectrum(150, {{1, 7}})), 10);        // sevenfold, as in a cross of eight arms
  expect_found(Known(spectrum(150, {{0, 2}, {4, 3}})), 9); // two crowds
  expect_found(Known(spectrum(150, {{7, 5}})), 10);        // wanted ends within a crowd
  expect_found(Known(spectrum(60, {{1, 7}})), 10);         // the same, dense
}

TEST(Eigenpairs, LeavesOutWhatIsKnown) {
  for (const Index n : {60, 150}) {
    const Known k(spectrum(n));
    const EigenPairs pairs = largest_pairs(k.problem(), 4, k.vectors.leftCols(3));
    ASSERT_EQ(pairs.values.size(), 4);
    for (Index i = 0; i < 4; ++i) EXPECT_NEAR(pairs.values[i], k.values[i + 3], 1e-10) << n;
  }
}

TEST(Eigenpairs, OnlyPositiveValuesAreAnswers) {
  VectorXd nu = -spectrum(120);
  nu.reverseInPlace();
  nu[0] = 0.5;
  nu[1] = 0.2;
  const Known k(nu);
  const EigenPairs pairs = largest_pairs(k.problem(), 5, MatrixXd(120, 0));
  ASSERT_EQ(pairs.values.size(), 2);
  EXPECT_NEAR(pairs.values[0], 0.5, 1e-10);
  EXPECT_NEAR(pairs.values[1], 0.2, 1e-10);
}

TEST(BlockSteps, LargestBesideSeesFromBelow) {
  const Known k(spectrum(150, {{2, 3}}));
  int operations = 0;
  const double value = largest_beside(k.problem(), k.vectors.leftCols(2), 0.334, operations);
  EXPECT_LE(value, k.values[2] * (1 + 1e-12));
  EXPECT_GT(value, k.values[2] * (1 - 2e-3));
  EXPECT_GT(operations, 0);
  // Far from what is enough, it may stop early.
  EXPECT_LE(largest_beside(k.problem(), k.vectors.leftCols(2), 2, operations), k.values[2] * (1 + 1e-12));
  // Asked whether anything passes 0.3, it may stop as soon as it sees a third.
  EXPECT_GT(largest_beside(k.problem(), k.vectors.leftCols(2), 0.3, operations), 0.3);
}

TEST(BlockSteps, PolishTakesTheErrorOut) {
  const Known k(spectrum(100));
  EigenPairs pairs;
  pairs.vectors = k.vectors.leftCols(4) + 1e-4 * k.vectors.rightCols(4);
  polish(k.problem(), pairs);
  for (Index i = 0; i < 4; ++i) EXPECT_NEAR(pairs.values[i], k.values[i], 1e-10);
  EXPECT_NEAR(pairs.residual, 1e-4, 1e-5); // what it took out
}

} // namespace
} // namespace bedbow
