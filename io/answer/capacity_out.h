/// \file
/// Results of `bedbow capacity` as a table, JSON, CSV, a shaded picture and a plot.
#pragma once

#include "io/draw/heat_map.h"
#include "io/draw/plot.h"
#include "io/text/table.h"
#include "io/units/output_units.h"
#include "solver/study/capacity.h"

#include <string>

namespace bedbow {

/// One row per sheet. \param machine source of the materials.
TextTable capacity_table(const CapacityTable& table, const Machine& machine, const OutputUnits& units);
/// {"rows": [{"material", "width_mm", "centre_mm", "thickness_mm", "limited_by"}]}; null where no sheet is thin enough.
std::string capacity_json(const CapacityTable& table, const Machine& machine);
std::string capacity_csv(const CapacityTable& table, const Machine& machine);
/// The sheets of one material: a row per width, cells from midway to midway between neighbouring places, posts marked.
HeatMap capacity_map(const CapacityTable& table, const Machine& machine, int material);
/// Thickness over the place of the sheet's middle, a line per width.
Plot capacity_plot(const CapacityTable& table, const Machine& machine, int material);

} // namespace bedbow
