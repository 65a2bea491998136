/// \file
/// Column by column L D L' by Eigen's SimplicialLDLT, minimum degree. Slow and simple; the reference for the others.
#pragma once

#include "solver/linear/factorization.h"

namespace bedbow {

FactorOutcome simplicial_factor(const SymmetricMatrix& lower, const FactorHints& hints);

} // namespace bedbow
