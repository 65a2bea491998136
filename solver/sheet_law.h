/// \file
/// Sheet bending: the moment per unit width that folds the sheet, and what springs back. Each law is an entry in a
/// registry; plugins bring others.
#pragma once

#include "mesh/machine.h"

#include <functional>
#include <string>

namespace bedbow {

/// A moment law: bending moment per unit width [N m/m] > 0 to fold `sheet` of `material`.
/// Throws std::invalid_argument naming the material value it misses.
using MomentLaw = std::function<double(const Sheet& sheet, const Material& material)>;

struct MomentLawEntry {
  std::string name, description, source;
  MomentLaw moment;
  std::string origin = "built in";
};

/// Line loads that the sheet puts on the machine, from the moment per width.
struct SheetLoads {
  double moment = 0; ///< m [N m/m]
  double apron = 0;  ///< F = m / flange [N/m]
  double grip = 0;   ///< m / grip [N/m]
};
SheetLoads sheet_loads(const Sheet& sheet, double moment);

/// How much further than the wanted angle the bend must be swung to, so that it springs back to it [rad].
/// \param moment per width at full bend [N m/m]: with no hardening law Gardiner's elastic-perfectly plastic formula in
/// plane strain; with K and n, elastic unloading of that moment. Source: docs/theory/sheet.md.
double springback(const Sheet& sheet, const Material& material, double moment);

} // namespace bedbow
