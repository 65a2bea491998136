/// \file
/// Contact by a dual active-set method: always ends at the solution, or at an unrestrained mode.
#pragma once

#include "solver/contact/condensed_springs.h"

namespace bedbow {

/// Solves the condensed system by the dual active-set method for strictly convex quadratic programs: all rows are
/// bilateral at first; then the most violated constraint is released by shifting its gap until its force is zero, and
/// each open row that closes on the way becomes active again. Likewise a row that exceeds its bound is released down to
/// the bound, and sticks again when it would move against its force. The energy increases with every released row, so
/// no set repeats. Slower than Newton's method from a good start, but more robust where very stiff rows make the energy
/// flat.
///
/// Source: D. Goldfarb, A. Idnani, Math. Program. 27 (1983) 1-33 (from memory); theory in docs/theory/contact.md.
///
/// \param out its iterations and history are continued; forces, stretches, modes, rows and status are filled in.
///   Status `mechanism` with the mode where a row cannot be opened and nothing restrains it; `no_convergence` beyond
///   most_iterations.
void dual_active_set(CondensedSprings& rows, const CondensedSystem& system, int most_iterations, ContactSolution& out);

} // namespace bedbow
