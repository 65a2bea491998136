/// \file
/// Plots along the bend line: bow, clamp force and its reserve, deviation of the bend angle.
#pragma once

#include "io/draw/plot.h"
#include "io/units/output_units.h"
#include "mesh/machine/machine.h"
#include "solver/findings/findings.h"

#include <vector>

namespace bedbow {

/// Distance of a line's points (x, w) from the chord between its two ends.
std::vector<double> from_chord(const std::vector<double>& x, const std::vector<double>& w);

/// Bow of the three bodies in the worst step, of each body in all steps, clamp force and its reserve per length, and
/// the bend angle's deviation from its mean; only plots with values. Empty without a bend line.
std::vector<Plot> bend_line_plots(const Findings& findings, const Limits& limits, const OutputUnits& units);

} // namespace bedbow
