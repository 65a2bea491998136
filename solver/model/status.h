/// \file
/// How an analysis can end.
#pragma once

namespace bedbow {

enum class Status {
  ok,
  mechanism,      ///< something moves freely
  no_convergence, ///< the one-sided joints do not settle
  out_of_range,   ///< solved, but displacements are too large for what the equations assume (displacement_guard.h)
  inaccurate      ///< solved, but equilibrium or contact is missed by more than rounding explains (certificate.h)
};

} // namespace bedbow
