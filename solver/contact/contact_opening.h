/// \file
/// Contact by opening one row after another: sure to end at the answer, or at the movement that nothing stops.
#pragma once

#include "solver/contact/contact_rows.h"

namespace bedbow {

/// Solves the condensed system by the dual method of active sets for strictly convex quadratic programs: all rows carry
/// both ways at first; then the row that carries worst the wrong way is opened, by moving the place where it begins to
/// carry until its force is zero, and each open row that meets its limit on the way joins in again. The energy rises
/// with every row, so no set comes twice. Slower than Newton's steps from a near start, and surer where the stiffest
/// rows make the energy flat.
///
/// Source: D. Goldfarb, A. Idnani, Math. Program. 27 (1983) 1-33 (from memory); theory in docs/theory/contact.md.
///
/// \param out its iterations and history are carried on; forces, stretches, movements, rows and status are filled in.
///   Status `loose` with the movement where a row cannot be opened and nothing stops it; `no_convergence` past
///   most_iterations.
void settle_by_opening(ContactRows& rows, const CondensedSystem& system, int most_iterations, ContactSolution& out);

} // namespace bedbow
