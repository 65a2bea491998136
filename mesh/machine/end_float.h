/// \file
/// End float of the hinges: which of them hold the apron along x. Theory: docs/theory/joints.md.
#pragma once

#include "mesh/machine/machine.h"

#include <cstddef>

namespace bedbow {

/// Total play of a hinge along its pin [m], half of it each way: 0 locks the apron there, infinity lets it float. Where
/// the case says nothing the first hinge in the file locates the apron and the others float.
double end_float_of(const Machine& machine, std::size_t hinge);

/// Whether a hinge locks the apron along x.
bool hinges_locate(const Machine& machine);

} // namespace bedbow
