/// \file
/// Largest eigenvalues of G u = nu A u with A positive definite and given only by its inverse. Both problems
/// reduce to it: vibration with G = M, A = K - sigma M, nu = 1 / (omega^2 - sigma) (shift-invert), and
/// buckling with G = -K_g, A = K, nu = 1 / factor. Theory: docs/theory/modes.md, docs/theory/buckling.md.
#pragma once

#include <Eigen/Core>

#include <functional>
#include <stdexcept>

namespace bedbow {

/// The eigenvalue search did not converge: a numerical outcome, which the analysis turns into a status.
struct EigenFailure : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// The pencil as operators. Rigid joints may make A^-1 singular: then all vectors are in its range.
struct EigenProblem {
  /// Columns at once.
  using Product = std::function<void(const Eigen::Ref<const Eigen::MatrixXd>& x, Eigen::Ref<Eigen::MatrixXd> y)>;
  Eigen::Index size = 0;
  Product g;                                                ///< Y = G X, G symmetric
  Product inner;                                            ///< Y = B X, the inner product: G where `same`, else A
  std::function<void(Eigen::Ref<Eigen::MatrixXd>)> inverse; ///< X <- A^-1 X, columns at once
  bool same = false;                                        ///< g and inner are the same
  double nothing = 1e-14; ///< fraction of the greatest |nu| below which a value is zero
};

struct EigenPairs {
  Eigen::VectorXd values;   ///< nu, descending
  Eigen::MatrixXd vectors;  ///< size x count, U' B U = I
  double residual = 0;      ///< worst |u - A^-1 G u / nu| / |u|, norms in B
  double orthogonality = 0; ///< worst entry of |U' B U - I|
  double scale = 0;         ///< greatest |nu| found
  int operations = 0;       ///< columns passed to `inverse`
};

/// The `wanted` largest positive nu, or fewer if there are no more. Found by Lanczos (Spectra), including repeated
/// values: the search is repeated without the known vectors until it finds no value as large. Small problems are solved
/// dense. \param known size x k, B-orthonormal known eigenvectors; they are excluded. Throws EigenFailure when Lanczos
/// does not converge.
EigenPairs largest_pairs(const EigenProblem& problem, int wanted, const Eigen::MatrixXd& known);

/// Approximate greatest |nu|, from below and rarely less than a tenth of it: the power method on one vector. 0 where G
/// is zero.
double greatest_value(const EigenProblem& problem);

} // namespace bedbow
