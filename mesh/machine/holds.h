/// \file
/// Which points a hold takes.
#pragma once

#include "mesh/machine/machine.h"

namespace bedbow {

/// Whether a point stands where a hold of a point or a line holds the structure. \param at [m].
bool on_hold(const Hold& hold, const Eigen::Vector3d& at);

} // namespace bedbow
