/// \file
/// From a Machine to its Mesh.
#pragma once

#include "mesh/mesh.h"
#include "mesh/registry.h"

#include <span>

namespace bedbow {

/// Makes nodes, elements, links and joints of a machine.
/// \param shapes section shapes by name. \param extra further x that must be stations [m].
/// Throws std::invalid_argument saying what does not fit together and where; a validated case gives none.
Mesh make_mesh(const Machine& machine, const Registry<ShapeEntry>& shapes, std::span<const double> extra = {});

} // namespace bedbow
