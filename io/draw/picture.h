/// \file
/// The displaced machine as a PNG picture, made without a display.
#pragma once

#include "io/units/output_units.h"
#include "solver/findings/findings.h"

#include <string>

namespace bedbow {

struct PictureOptions {
  int width = 1600, height = 1000; ///< [px], at least 400 x 300
  double factor = 0;               ///< exaggeration of the displacement; 0: a suitable round factor
};

/// A round factor, 1 2 5 10 ..., at which the greatest displacement is about a twentieth of the machine's size.
double good_factor(const Fields& fields);

/// PNG of one step: the machine from before, left and above, coloured by displacement, with title, step, factor and
/// scale. Throws std::invalid_argument for a step without fields, FileError where the module is missing.
std::string machine_picture(const std::string& title, const StepResult& step, const OutputUnits& units,
                            const PictureOptions& options = {});

} // namespace bedbow
