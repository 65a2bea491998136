/// \file
/// Supernodal L L' by CHOLMOD (Chen, Davis, Hager & Rajamanickam 2008).
#pragma once

#include "solver/linear/factorization.h"

namespace bedbow {

/// Factors a positive definite matrix; minimum degree on the graph of nodes. An indefinite matrix (hints.positive
/// false) goes to simplicial_factor. Throws std::runtime_error when memory runs out.
FactorOutcome cholmod_factor(const SymmetricMatrix& lower, const FactorHints& hints);

} // namespace bedbow
