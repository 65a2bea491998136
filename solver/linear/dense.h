/// \file
/// Decompositions of dense matrices. They are compiled once, here: each costs the compiler seconds wherever it is used.
#pragma once

#include <Eigen/Core>

namespace bedbow {

/// Eigenvalues in ascending order, and eigenvectors as columns.
struct EigenDecomposition {
  Eigen::VectorXd values;
  Eigen::MatrixXd vectors;
};

/// Of a symmetric matrix, whose lower triangle is read.
Eigen::VectorXd symmetric_eigenvalues(const Eigen::MatrixXd& a);
/// The same with orthonormal eigenvectors.
EigenDecomposition symmetric_eigen(const Eigen::MatrixXd& a);

/// Of a v = lambda b v, with a symmetric and b symmetric positive definite; v' b v = 1.
EigenDecomposition generalized_eigen(const Eigen::MatrixXd& a, const Eigen::MatrixXd& b);
/// Eigenvalues alone; empty where b is not positive definite.
Eigen::VectorXd generalized_eigenvalues(const Eigen::MatrixXd& a, const Eigen::MatrixXd& b);

/// Singular values in descending order, and the right singular vectors as columns (as many as the values).
struct RightSingular {
  Eigen::VectorXd values;
  Eigen::MatrixXd vectors;
};
RightSingular right_singular(const Eigen::MatrixXd& a);

/// Number of independent rows or columns. \param threshold on the pivots, relative to the greatest.
Eigen::Index rank_of(const Eigen::MatrixXd& a, double threshold);

/// The shortest x that makes |a x - b| least. \param threshold on the pivots, relative to the greatest.
Eigen::VectorXd least_squares(const Eigen::MatrixXd& a, const Eigen::VectorXd& b, double threshold);

/// Solves a x = b by LU with full pivoting, b of one or several columns.
Eigen::MatrixXd solve_dense(const Eigen::MatrixXd& a, const Eigen::MatrixXd& b);

} // namespace bedbow
