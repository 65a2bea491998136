/// \file
/// What is assumed of the hinges along their pins, in words. Theory: docs/theory/joints.md.
#pragma once

#include "mesh/build/mesh.h"

#include <string>
#include <vector>

namespace bedbow {

/// The play of each hinge that has some; what holds the apron along x, which hinges float, and that their thrust is not
/// checked. Empty without hinges.
std::vector<std::string> hinge_assumptions(const Machine& machine, const Mesh& mesh);

} // namespace bedbow
