/// \file
/// The same for problems so small that dense matrices are faster than Lanczos.
#pragma once

#include "solver/modes/eigen/eigenpairs.h"

namespace bedbow {

/// All finite values, largest first, with vectors scaled to u' A u = 1. \param known excluded, as in largest_pairs.
EigenPairs all_pairs_dense(const EigenProblem& problem, const Eigen::MatrixXd& known);

} // namespace bedbow
