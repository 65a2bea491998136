// Compliances by half solves on supernodal factors against whole solves of another solver.
#include "solver/linear/cholmod.h"
#include "solver/linear/multifrontal.h"
#include "solver/linear/simplicial.h"

#include "tests/unit/solver/linear/linear_matrices.h"
#include <gtest/gtest.h>

#include <random>

namespace bedbow {
namespace {

/// Few entries a column, some columns empty, as functionals of places are.
Eigen::SparseMatrix<double> few_entries(Eigen::Index rows, Eigen::Index columns, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> value(-1, 1);
  std::vector<Eigen::Triplet<double>> entries;
  for (Eigen::Index j = 0; j < columns; ++j)
    for (int k = 0; k < (j % 7 == 3 ? 0 : 5); ++k)
      entries.emplace_back(static_cast<int>(random() % static_cast<unsigned>(rows)), static_cast<int>(j),
                           value(random));
  Eigen::SparseMatrix<double> b(rows, columns);
  b.setFromTriplets(entries.begin(), entries.end());
  return b;
}

void compare_compliances(const SymmetricMatrix& a, const FactorFunction& factor) {
  FactorHints hints;
  hints.block = 6;
  const auto f = factor(a, hints).factorization, referee = simplicial_factor(a, hints).factorization;
  ASSERT_TRUE(f && referee);
  for (const Eigen::Index columns : {1, 5, 32, 33, 70}) {
    const auto b = few_entries(a.rows(), columns, static_cast<unsigned>(columns));
    const Eigen::MatrixXd c = f->compliance(b), reference = referee->compliance(b);
    EXPECT_LT((c - reference).norm(), 1e-10 * reference.norm()) << columns;
    EXPECT_EQ((c - c.transpose()).norm(), 0);
  }
}

TEST(Supernodal, ComplianceOfAStripAndOfASquare) {
  compare_compliances(test::grid(60, 6, 6, 1e-2), cholmod_factor);
  compare_compliances(test::grid(20, 20, 6, 1e-2), cholmod_factor);
}

TEST(Supernodal, ComplianceOfFronts) {
  compare_compliances(test::grid(600, 6, 6, 1e-2), multifrontal_factor);
}

} // namespace
} // namespace bedbow
