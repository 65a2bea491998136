/// \file
/// From a Machine to a Model ready to be solved.
#pragma once

#include "solver/registries.h"
#include "solver/steps.h"

namespace bedbow {

/// Meshes, numbers, assembles, factors and condenses. A part that moves by itself inside shows in
/// Model::structure.mechanisms. Throws std::invalid_argument for what makes no sense.
Model make_model(const Machine& machine, const Registries& registries);

/// The same from a mesh made before (make_mesh), perhaps with other joints. \param cache of parts; null: none.
Model make_model(const Machine& machine, const Registries& registries, Mesh mesh, PartCache* cache = nullptr);

/// Line loads of the machine's sheet by its moment law. Nothing where there is no sheet.
std::optional<SheetLoads> sheet_loads_of(const Machine& machine, const Registries& registries);

} // namespace bedbow
