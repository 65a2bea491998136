/// \file
/// The rows behind builtin_materials(), by trade. Each row names where its values come from.
#pragma once

#include "mesh/piece/material.h"

#include <vector>

namespace bedbow {

/// Bar, plate, pin and bolt materials: steels and aluminium alloys, minimum yield unless the row says otherwise.
std::vector<Material> structural_materials();

/// Sheet to be bent. Its yield acts as a load on the machine, so the rows give the upper or the typical value, and
/// state which.
std::vector<Material> sheet_materials();

/// Timber along the grain at 12 % moisture, and birch plywood, for prototypes: E is the bending modulus of the handbook
/// times 1.10, which removes the shear deflection of the bending test; G is the mean of G_LR and G_LT; `tensile` is the
/// modulus of rupture of clear wood. Timber does not yield: `yield` is unknown.
std::vector<Material> timber_materials();

} // namespace bedbow
