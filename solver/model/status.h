/// \file
/// How an analysis can end.
#pragma once

namespace bedbow {

enum class Status {
  ok,
  mechanism,      ///< a part moves freely
  no_convergence, ///< the one-sided joints do not converge
  out_of_range,   ///< solved, but displacements are too large for small-displacement theory (displacement_guard.h)
  inaccurate      ///< solved, but the error of equilibrium or contact exceeds rounding (certificate.h)
};

} // namespace bedbow
