/// \file
/// Bars that rest on each other in a drawing, so that they still do when sizes change.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/registry.h"

namespace bedbow {

/// Gives a `stack` to every bar without one that a weld or a row of screws joins to another bar of its body and that
/// touches it with a face. The bar at the bend line stays where it is; the others rest on what lies nearer to it, bar
/// by bar. What does not touch is left as it is. Places do not change by more than what the drawing is out by.
/// \param slack what a drawing may be out by [m].
void stack_what_touches(Machine& machine, const Registry<ShapeEntry>& shapes, double slack = 0.1e-3);

} // namespace bedbow
