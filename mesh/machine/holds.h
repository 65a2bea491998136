/// \file
/// Which points a hold fixes.
#pragma once

#include "mesh/machine/machine.h"

namespace bedbow {

/// Whether a point lies where a hold of a point or a line fixes the structure. \param at [m].
bool on_hold(const Hold& hold, const Eigen::Vector3d& at);

} // namespace bedbow
