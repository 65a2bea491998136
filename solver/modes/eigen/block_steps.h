/// \file
/// Steps on several vectors of an EigenProblem at once: solves and products take a fraction of the time needed vector
/// by vector.
#pragma once

#include "solver/modes/eigen/eigenpairs.h"

namespace bedbow {

/// Lower bound of the largest value in the space beside `out`, by a block of vectors, and so including its
/// multiplicity. Block Krylov space with Rayleigh-Ritz (Golub & Van Loan, Matrix Computations, sec. 10.3.6, from
/// memory). Stops when the value exceeds `enough`, or by its growth will not, or is constant to three digits. \param
/// out B-orthonormal columns. \param operations counts the columns passed to `inverse`.
double largest_beside(const EigenProblem& problem, const Eigen::MatrixXd& out, double enough, int& operations);

/// One more step of subspace iteration on all vectors together, with Rayleigh-Ritz in their span; sets `residual`.
void polish(const EigenProblem& problem, EigenPairs& pairs);

} // namespace bedbow
