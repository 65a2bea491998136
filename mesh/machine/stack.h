/// \file
/// Bars that lie on, under, behind or before another one, whatever their sizes.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/machine/problem.h"
#include "mesh/piece/registry.h"

#include <vector>

namespace bedbow {

/// Puts every bar that has a `stack` where it touches its neighbour: `on` sets its lower face on the other's upper
/// face, `under` the other way round, `behind` its front face (least y) to the other's rear face, `before` the other
/// way round. The other coordinate of `at` stays; where it is NaN it becomes that of the other bar's centroid. Call it
/// again after sizes have changed. \return problems: bars that stack on each other in a circle, or on a bar that has no
/// place.
std::vector<Problem> apply_stacks(Machine& machine, const Registry<ShapeEntry>& shapes);

} // namespace bedbow
