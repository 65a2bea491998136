/// \file
/// Whether a machine makes sense: things that fit together one by one, but not with each other.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/machine/problem.h"
#include "mesh/piece/registry.h"

#include <vector>

namespace bedbow {

/// Everything that is wrong or doubtful about a machine, each with the place of the table it belongs to.
/// Values that are NaN are passed over: whoever made them NaN has said why.
/// \param shapes section shapes, for how far bars reach. \param springback how much further than wanted the bend is
/// swung [rad]; 0 where the moment law does not say.
std::vector<Problem> validate(const Machine& machine, const Registry<ShapeEntry>& shapes, double springback);

} // namespace bedbow
