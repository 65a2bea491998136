/// \file
/// Outlines of bars in the (y, z) plane.
#pragma once

#include "mesh/check/polygon.h"
#include "mesh/machine/machine.h"
#include "mesh/piece/registry.h"

namespace bedbow {

/// Outside of a bar where it lies; empty where place or shape are not known. Given section properties have an outline
/// only where the case says how wide and high the section is.
Polygon outline_of(const Bar& bar, const Registry<ShapeEntry>& shapes);

/// A shape that fills its bounding box from outside: a rectangle or a tube, turned by quarters.
bool is_block(const Shape& shape);

} // namespace bedbow
