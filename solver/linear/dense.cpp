#include "solver/linear/dense.h"

#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <Eigen/QR>
#include <Eigen/SVD>

namespace bedbow {

using Eigen::MatrixXd;
using Eigen::VectorXd;

VectorXd symmetric_eigenvalues(const MatrixXd& a) {
  return Eigen::SelfAdjointEigenSolver<MatrixXd>(a, Eigen::EigenvaluesOnly).eigenvalues();
}

EigenDecomposition symmetric_eigen(const MatrixXd& a) {
  const Eigen::SelfAdjointEigenSolver<MatrixXd> eigen(a);
  return {eigen.eigenvalues(), eigen.eigenvectors()};
}

EigenDecomposition generalized_eigen(const MatrixXd& a, const MatrixXd& b) {
  const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> eigen(a, b);
  return {eigen.eigenvalues(), eigen.eigenvectors()};
}

VectorXd generalized_eigenvalues(const MatrixXd& a, const MatrixXd& b) {
  const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> eigen(a, b, Eigen::EigenvaluesOnly);
  return eigen.info() == Eigen::Success ? eigen.eigenvalues() : VectorXd();
}

RightSingular right_singular(const MatrixXd& a) {
  const Eigen::JacobiSVD<MatrixXd> svd(a, Eigen::ComputeThinV);
  return {svd.singularValues(), svd.matrixV()};
}

Eigen::Index rank_of(const MatrixXd& a, double threshold) {
  Eigen::ColPivHouseholderQR<MatrixXd> qr(a);
  qr.setThreshold(threshold);
  return qr.rank();
}

VectorXd least_squares(const MatrixXd& a, const VectorXd& b, double threshold) {
  Eigen::CompleteOrthogonalDecomposition<MatrixXd> qr;
  qr.setThreshold(threshold);
  qr.compute(a);
  return qr.solve(b);
}

MatrixXd solve_dense(const MatrixXd& a, const MatrixXd& b) {
  return a.fullPivLu().solve(b);
}

} // namespace bedbow
