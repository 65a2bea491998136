/// \file
/// How bars are modelled, and how finely, where a case leaves it open.
#pragma once

#include "mesh/machine/machine.h"

namespace bedbow {

/// Strip for a rectangle on its sides, beam for anything else. In two dimensions nothing bends across. Thick bars need
/// it no less than flats: even at twice as wide as thick, joints and pads turn the section where they stand
/// (docs/theory/strips.md).
BarModel usual_model(const Shape& shape, int dimension);

/// Greatest length of an element [m]: twice SolveSettings' where there are strips, which need no shorter ones, and
/// nothing of plates, which do.
double usual_element_size(const Machine& machine);

} // namespace bedbow
