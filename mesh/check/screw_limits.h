/// \file
/// Bounds of a screwed machine on its existing mesh: rows without slip, as welds or as screws about which the bars can
/// still roll, and screws on which the bars slide freely.
#pragma once

#include "mesh/build/mesh.h"

namespace bedbow {

/// Every row of screws welded, from half a pitch before its first screw to half a pitch behind its last, as far as both
/// bars reach.
Mesh without_slip(const Machine& machine, Mesh mesh);

/// Every screw as stiff in shear as a weld of its diameter's length; across the faces and in rolling it acts as
/// before.
Mesh without_slip_rolling(const Machine& machine, Mesh mesh);

/// Every row without shear along x; across it the screws still hold. Where nothing but screws keeps two bars from
/// sliding apart, the middle screw of one row keeps its shear: a single connection cannot make them bend as one.
Mesh without_shear(const Machine& machine, Mesh mesh);

} // namespace bedbow
