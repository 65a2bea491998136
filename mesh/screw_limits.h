/// \file
/// The two limits of a screwed machine on the mesh that it has: screws that let nothing slip, and screws that let the
/// bars slide on each other. What the screws really do lies between.
#pragma once

#include "mesh/mesh.h"

namespace bedbow {

/// Every row of screws welded, from half a pitch before its first screw to half a pitch behind its last, as far as both
/// bars reach.
Mesh without_slip(const Machine& machine, Mesh mesh);

/// Every row without shear along x; across it the screws still hold. Where nothing but screws keeps two bars from
/// sliding apart, the middle screw of one row keeps its shear: a single connection cannot make them bend as one.
Mesh without_shear(const Machine& machine, Mesh mesh);

} // namespace bedbow
