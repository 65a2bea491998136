#include "solver/modes/eigen/symmetric_product.h"

#include "tests/unit/solver/linear/linear_matrices.h"
#include <gtest/gtest.h>

namespace bedbow {
namespace {

// Against dense products, over sizes that do and do not fill slices of four rows, and any number of columns.
TEST(SymmetricProduct, MultipliesAsDenseDoes) {
  for (const int n : {1, 3, 4, 6, 17, 90}) {
    SymmetricMatrix a = test::random_band(n, 5, 0, static_cast<unsigned>(n));
    for (int k = 0; k < a.nonZeros(); k += 3) a.valuePtr()[k] = 0; // zeros of a pattern, on the diagonal too
    const SymmetricProduct product(a);
    EXPECT_EQ(product.size(), n);
    for (const int columns : {0, 1, 3, 4, 5, 9}) {
      const Eigen::MatrixXd x = Eigen::MatrixXd::Random(n, columns);
      Eigen::MatrixXd y = Eigen::MatrixXd::Constant(n, columns, 7);
      product.multiply(x, y);
      EXPECT_LE((y - test::full(a) * x).norm(), 1e-14 * (1 + x.norm()) * n) << n << " " << columns;
    }
  }
}

// Some rows of a larger block, as the parts of a machine are handed on.
TEST(SymmetricProduct, TakesRowsOfALargerBlock) {
  const SymmetricMatrix a = test::random_band(10, 2, 3, 1);
  const Eigen::MatrixXd x = Eigen::MatrixXd::Random(30, 6);
  Eigen::MatrixXd y = Eigen::MatrixXd::Zero(30, 6);
  SymmetricProduct(a).multiply(x.middleRows(7, 10), y.middleRows(7, 10));
  EXPECT_LE((y.middleRows(7, 10) - test::full(a) * x.middleRows(7, 10)).norm(), 1e-13);
  EXPECT_EQ(y.topRows(7).norm() + y.bottomRows(13).norm(), 0);
}

} // namespace
} // namespace bedbow
