/// \file
/// Selects the stations along the bend line at which nose and bed meet, where not all are needed.
#pragma once

#include <vector>

namespace bedbow {

/// A place along the bend line, and its tributary length [m].
struct Spot {
  double x = 0, length = 0;
};

/// Spots from `from` to `to`: both ends and all of `kept` between them, however close. The distance between two of
/// these is divided into as many equal cells as are not shorter than `least`, and each cell takes the station nearest
/// to its middle, if it has any; the halves of a cell at either end belong to the ends. So all stations of an even mesh
/// get a spot unless they are closer than `least`, and then as many as would stand `least` apart. Mirrored stations
/// give mirrored spots; differences below same_place count as equal, so that rounding decides nothing. Each spot's
/// tributary length is half the distance to each neighbour: a skipped station is shared between them, and the lengths
/// add up to `to` - `from`. \param stations, kept ascending [m].
std::vector<Spot> choose_spots(const std::vector<double>& stations, const std::vector<double>& kept, double from,
                               double to, double least);

} // namespace bedbow
