/// \file
/// One run of Lanczos (Spectra: implicit restarts) from one vector.
#pragma once

#include "solver/modes/eigen/eigenpairs.h"

namespace bedbow {

struct Search {
  Eigen::Index values = 0, basis = 0;
  Eigen::Index restarts = 0;
  double tolerance = 0;
};

/// Largest values beside `out`, largest first; a repeated one is found once, except for rounding. Sets no residual and
/// no orthogonality: vectors are orthogonal to nine digits. \param out B-orthonormal columns. Throws EigenFailure when
/// a positive value does not converge, and for whatever Spectra throws.
EigenPairs lanczos(const EigenProblem& problem, const Eigen::MatrixXd& out, const Search& search);

} // namespace bedbow
