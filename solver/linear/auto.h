/// \file
/// Choice of the linear solver by the matrix.
#pragma once

#include "solver/linear/factorization.h"

namespace bedbow {

/// Envelope solver in the order given when hints.banded_order, else in the better of the order given and reverse
/// Cuthill-McKee.
FactorOutcome band_factor(const SymmetricMatrix& lower, const FactorHints& hints);

/// The envelope solver where the envelope is small, else the solver for large sparse matrices.
FactorOutcome auto_factor(const SymmetricMatrix& lower, const FactorHints& hints);

} // namespace bedbow
