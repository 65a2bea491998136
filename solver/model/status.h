/// \file
/// How an analysis can end.
#pragma once

#include "mesh/piece/choice.h"

#include <array>

namespace bedbow {

enum class Status {
  ok,
  mechanism,      ///< a part moves freely
  no_convergence, ///< the one-sided joints do not converge
  out_of_range,   ///< solved, but displacements are too large for small-displacement theory (displacement_guard.h)
  inaccurate      ///< solved, but the error of equilibrium or contact exceeds rounding (certificate.h)
};
inline constexpr std::array status_words{
    Choice{"ok", Status::ok}, Choice{"mechanism", Status::mechanism}, Choice{"no_convergence", Status::no_convergence},
    Choice{"out_of_range", Status::out_of_range}, Choice{"inaccurate", Status::inaccurate}};

} // namespace bedbow
