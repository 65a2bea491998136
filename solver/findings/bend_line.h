/// \file
/// Results along the bend line: displacement of nose, bed edge and apron face, bow, straightness, bend-angle deviation,
/// clamping of the sheet by the nose.
#pragma once

#include "solver/findings/findings.h"
#include "solver/model/steps.h"

#include <span>

namespace bedbow {

/// Greatest distance of points (x, w) from the chord between the first and the last.
double bow_from_chord(std::span<const double> x, std::span<const double> w);

/// Width of the smallest zone between two parallel lines that contains all points (x, w): straightness after ISO 1101.
/// Measured along w, as the slope of a bow is far below 1.
double straightness(std::span<const double> x, std::span<const double> w);

/// Stations, bow and angles of one step.
void fill_bend_line(const Model& model, const StepSolution& step, StepResult& out);

} // namespace bedbow
