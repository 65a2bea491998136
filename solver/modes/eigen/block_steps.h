/// \file
/// Steps on several vectors of an EigenProblem at once: the solver and the products take a fraction of the time that
/// vector after vector would.
#pragma once

#include "solver/modes/eigen/eigenpairs.h"

namespace bedbow {

/// Largest value in the space beside `out`, seen from below by a block of vectors at once, and so as often as it is
/// repeated. Block Krylov space with Rayleigh-Ritz (Golub & Van Loan, Matrix Computations, sec. 10.3.6, from memory).
/// Stops when the value passes `enough`, or by its growth will not, or stands to three digits. \param out B-orthonormal
/// columns. \param operations counts the columns that `inverse` was asked for.
double largest_beside(const EigenProblem& problem, const Eigen::MatrixXd& out, double enough, int& operations);

/// One more step of subspace iteration on all vectors together, Rayleigh-Ritz in what they span; sets `residual`.
void polish(const EigenProblem& problem, EigenPairs& pairs);

} // namespace bedbow
