/// \file
/// What flange and sheet a machine takes as drawn: the least flange, and how deep a sheet goes in behind the bend line.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/registry.h"

#include <optional>
#include <string>

namespace bedbow {

struct SheetRoom {
  /// The apron needs something straight to push on: thickness and inside radius, or the front of its face where that
  /// stands further off the bend line [m].
  double least_flange = 0;
  /// How deep the sheet goes in behind the bend line, up to the first stud or eccentric within its width [m]; nullopt
  /// where nothing stands in its way.
  std::optional<double> depth;
  std::string depth_by; ///< what stands there
};

/// Without a sheet, and in the x-z plane, nullopt. Bars of unknown size are not looked at. Source: geometry.
std::optional<SheetRoom> sheet_room(const Machine& machine, const Registry<ShapeEntry>& shapes);

} // namespace bedbow
