#include "solver/linear/factorization.h"

namespace bedbow {

Eigen::MatrixXd Factorization::compliance(const Eigen::SparseMatrix<double>& b) const {
  Eigen::MatrixXd x(b);
  solve(x);
  const Eigen::MatrixXd c = b.transpose() * x;
  return 0.5 * (c + c.transpose());
}

} // namespace bedbow
