/// \file
/// The limits of a screwed machine on the mesh that it has: rows that let nothing slip, as welds or as screws about
/// which the bars can still roll, and screws that let the bars slide on each other.
#pragma once

#include "mesh/build/mesh.h"

namespace bedbow {

/// Every row of screws welded, from half a pitch before its first screw to half a pitch behind its last, as far as both
/// bars reach.
Mesh without_slip(const Machine& machine, Mesh mesh);

/// Every screw as stiff in shear as a weld of its diameter's length; across the faces and in rolling it holds as
/// before.
Mesh without_slip_rolling(const Machine& machine, Mesh mesh);

/// Every row without shear along x; across it the screws still hold. Where nothing but screws keeps two bars from
/// sliding apart, the middle screw of one row keeps its shear: a single connection cannot make them bend as one.
Mesh without_shear(const Machine& machine, Mesh mesh);

} // namespace bedbow
