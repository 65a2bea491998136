#include "solver/modes/eigen/eigenpairs_dense.h"

#include "solver/linear/dense.h"

namespace bedbow {

using Eigen::Index;
using Eigen::MatrixXd;

EigenPairs all_pairs_dense(const EigenProblem& p, const MatrixXd& known) {
  const Index n = p.size;
  // Compliance C = A^-1, semidefinite where joints are rigid; C = F F', and nu are the eigenvalues of F' G F.
  MatrixXd c = MatrixXd::Identity(n, n);
  p.inverse(c);
  c = (c + c.transpose()).eval() / 2;
  for (Index j = 0; j < known.cols(); ++j) {
    // A known u has A u = a B u: removing u u' / (u' A u) from C removes it from the problem.
    Eigen::VectorXd b(n);
    p.inner(known.col(j), b);
    const Eigen::VectorXd cb = c * b; // = u / a
    c -= cb * cb.transpose() / b.dot(cb);
  }
  const EigenDecomposition compliance = symmetric_eigen(c);
  const Eigen::VectorXd& d = compliance.values;
  Index first = 0;
  while (first < n && d[first] <= 1e-14 * d[n - 1]) ++first;
  const MatrixXd f =
      compliance.vectors.rightCols(n - first) * d.tail(n - first).cwiseSqrt().asDiagonal().toDenseMatrix();
  MatrixXd gf(n, f.cols());
  p.g(f, gf);
  MatrixXd h = f.transpose() * gf;
  h = (h + h.transpose()).eval() / 2;
  const EigenDecomposition eigen = symmetric_eigen(h);
  EigenPairs pairs;
  pairs.values = eigen.values.reverse();
  pairs.scale = eigen.values.size() ? eigen.values.cwiseAbs().maxCoeff() : 0;
  pairs.vectors = f * eigen.vectors.rowwise().reverse();
  pairs.operations = static_cast<int>(n);
  return pairs;
}

} // namespace bedbow
