/// \file
/// Two bars joined along x without slip.
#pragma once

#include "mesh/build/mesh.h"

namespace bedbow {

/// Stiffness of a seam per length of it, along each axis [N/m per m]. \param E the greater Young's modulus of the two
/// that it joins [Pa].
double seam_stiffness(double E);

/// Joins the two bars along the line where they meet, over their common length (within the weld's from and to): both
/// move together there and roll together, as very stiff springs at every station. Their sections are not constrained
/// to stay plane, so that an open section may warp when it twists. Between stations the bars are independent: the
/// error falls with the square of the element size. See docs/theory/fasteners.md.
void add_weld(const Machine& machine, const Weld& weld, int index, Mesh& mesh);

} // namespace bedbow
