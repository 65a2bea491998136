/// \file
/// Whether a machine is consistent: values that are valid one by one may contradict each other.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/machine/problem.h"
#include "mesh/machine/springback.h"
#include "mesh/piece/registry.h"

#include <vector>

namespace bedbow {

/// All errors and warnings about a machine, each with the position of the table it belongs to.
/// NaN values are skipped: the reader that set them has reported why.
/// \param shapes section shapes, for how far bars reach. \param springback of its sheet; 0 where the moment law does
/// not say.
std::vector<Problem> validate(const Machine& machine, const Registry<ShapeEntry>& shapes, const Springback& springback);

} // namespace bedbow
