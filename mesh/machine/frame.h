/// \file
/// Axes that turn with the apron.
#pragma once

#include <Eigen/Core>

namespace bedbow {

/// Turns the apron from 0 deg to angle: a vector from the apron's axes to global axes. Rotation about x that takes z
/// to (0, sin angle, cos angle).
Eigen::Matrix3d apron_turn(double angle);

} // namespace bedbow
