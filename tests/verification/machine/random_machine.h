/// \file
/// Complete folding brakes drawn at random: bed, clamp and apron of flats and hollow sections, posts with preload,
/// cams, hinges, handles, supports or legs, and joints less than 4 mm from each other and from the sheet's ends. The
/// same seed gives the same machine with every compiler and library.
#pragma once

#include "tests/verification/machine/case_entries.h"

#include <cstdint>
#include <string>

namespace bedbow::verification {

struct RandomMachine {
  std::string what;   ///< in a few words, for messages
  double length = 0;  ///< of the bed, along x [mm]
  bool close = false; ///< has joints closer than 4 mm to each other or to the sheet's ends
  CaseTables tables;
};

/// \param seed 1, 2, ...
RandomMachine random_machine(std::uint64_t seed);

} // namespace bedbow::verification
