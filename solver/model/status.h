/// \file
/// How an analysis can end.
#pragma once

#include "mesh/piece/choice.h"

#include <array>

namespace bedbow {

enum class Status {
  ok,
  mechanism,      ///< something moves freely
  no_convergence, ///< the one-sided joints do not settle
  out_of_range,   ///< solved, but displacements are too large for what the equations assume (displacement_guard.h)
  inaccurate      ///< solved, but equilibrium or contact is missed by more than rounding explains (certificate.h)
};
inline constexpr std::array status_words{
    Choice{"ok", Status::ok}, Choice{"mechanism", Status::mechanism}, Choice{"no_convergence", Status::no_convergence},
    Choice{"out_of_range", Status::out_of_range}, Choice{"inaccurate", Status::inaccurate}};

} // namespace bedbow
