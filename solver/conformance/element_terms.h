/// \file
/// Optional matrices of an element besides its stiffness, checked where present.
#pragma once

#include "solver/conformance/conformance.h"

namespace bedbow::conformance {

/// Values of the state that `geometric` takes, and of the load that `load` takes.
int state_size(int dimension);
int load_size(int dimension);

/// Mass: symmetric, not negative; total mass and mass centre of the body; its inertia as a rigid body, with or without
/// rotary inertia (lumped: up to four times as much, which point masses at the ends stay below).
void check_mass(const ElementEntry& element, Conformance& out);

/// Geometric stiffness: symmetric; forces in equilibrium turn with the body; critical loads of pinned rows of 32
/// elements. Along a line: Euler's load in both planes and the lateral buckling moment between forks, shear by
/// Engesser; over a surface: a wide plate along both its axes. Sources: Timoshenko & Gere 1961,
/// arts. 2.1, 2.17, 6.3, 9.2.
void check_geometric(const ElementEntry& element, Conformance& out);

/// Loads: in every rigid-body mode the nodal loads do the same work as the uniform load.
void check_loads(const ElementEntry& element, Conformance& out);

} // namespace bedbow::conformance
