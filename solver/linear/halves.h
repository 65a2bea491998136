/// \file
/// A long structure cut in two: both halves factored at once, in two threads, and joined along the cut.
///
/// The unknowns are ordered along the structure and cut in the middle; those of the first half that touch the second
/// are the cut s. Each half with the cut ordered last is a principal submatrix of A, and the end of its factor holds
/// the half's Schur complement: L_ss L_ss' = A_ss - A_sh A_hh^-1 A_hs. The sum of both less A_ss is the cut's own
/// matrix. The result does not depend on how many cores there are.
#pragma once

#include "solver/linear/factorization.h"

namespace bedbow {

/// Factors a positive definite matrix in two halves where it is long and large enough for that to pay, else (and when
/// it breaks down) by cholmod_factor. Throws std::runtime_error when memory runs out.
FactorOutcome halves_factor(const SymmetricMatrix& lower, const FactorHints& hints);

} // namespace bedbow
