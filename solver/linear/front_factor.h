/// \file
/// The numbers of a multifrontal factorization.
#pragma once

#include "solver/linear/fronts.h"

#include <memory>

namespace bedbow::linear {

/// Columns of L front by front, each front's as a dense matrix of its height; entries above the diagonal are undefined.
using FrontValues = std::unique_ptr<double[]>;

/// L L' of a matrix. \param q its groups. \return null where it is not positive definite, or where its groups
/// do not consist of whole blocks.
FrontValues factor_fronts(const SymmetricMatrix& lower, const Quotient& q, const Fronts& fronts, int threads);

} // namespace bedbow::linear
