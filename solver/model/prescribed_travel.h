/// \file
/// Prescribed displacement of parts, as opposed to deflection: cams raise a tail, shims lift an edge.
/// Theory: docs/theory/validity.md.
#pragma once

#include "solver/model/steps.h"

#include <vector>

namespace bedbow {

/// Effect of prescribed travel on a part: cams turn it as a lever about the nearest post or the nose, shims lift it.
/// The apron's swing is not included: its displacements are measured from its position at its angle.
struct Travel {
  double displacement = 0, rotation = 0; ///< [m], [rad]
};

/// By component: for parts without cams only the height of the shims, by which any part may be lifted.
std::vector<Travel> prescribed_travel(const Model& model);

} // namespace bedbow
