/// \file
/// Two bars joined along x without slip.
#pragma once

#include "mesh/mesh.h"

namespace bedbow {

/// Links the two bars rigidly at every station of their common length (within the weld's from and to). Between stations
/// they are free of each other: the error falls with the square of the element size.
void add_weld(const Machine& machine, const Weld& weld, Mesh& mesh);

} // namespace bedbow
