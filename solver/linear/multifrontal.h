/// \file
/// L L' front by front (Duff & Reid 1983, ACM TOMS 9(3) 302-325; Liu 1992), on all cores over the tree of fronts.
#pragma once

#include "solver/linear/factorization.h"

namespace bedbow {

/// Factors a positive definite matrix, in an order that suits two cores (the cheapest of several candidates by
/// their multiply-adds). An indefinite one (hints.positive false), a small one, and one that breaks down are passed to
/// cholmod_factor. The result does not depend on the number of cores. Throws std::bad_alloc when memory runs out.
FactorOutcome multifrontal_factor(const SymmetricMatrix& lower, const FactorHints& hints);

} // namespace bedbow
