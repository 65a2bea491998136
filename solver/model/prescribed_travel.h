/// \file
/// How far parts go because the case says so, not because anything gives: cams raise a tail, shims lift an edge.
/// Theory: docs/theory/validity.md.
#pragma once

#include "solver/model/steps.h"

#include <vector>

namespace bedbow {

/// What prescribed travel does to a part by itself: cams turn it as a lever about the nearest post or the nose, shims
/// lift it. The apron's swing is none: its displacements are those from where it stands at its angle.
struct Travel {
  double displacement = 0, rotation = 0; ///< [m], [rad]
};

/// By component: nothing for parts that no cam lifts, but for the height of the shims, which all may be lifted by.
std::vector<Travel> prescribed_travel(const Model& model);

} // namespace bedbow
