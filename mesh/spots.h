/// \file
/// Which of the stations along the bend line nose and bed meet at, where not all are wanted.
#pragma once

#include <vector>

namespace bedbow {

/// A place along the bend line, and the length that it stands for [m].
struct Spot {
  double x = 0, length = 0;
};

/// Spots from `from` to `to`: both ends, all of `kept` between them however close, and of the other stations those that
/// stand at least `least` from these and from each other, taken from both sides towards the middle: there two may
/// stand closer. So mirrored stations give mirrored spots. What differs by less than same_place counts as equal, so
/// that rounding decides nothing. Each spot stands for half the way to either neighbour: a station left out is shared
/// between them, and the lengths add up to to - from.
/// \param stations, kept ascending [m].
std::vector<Spot> choose_spots(const std::vector<double>& stations, const std::vector<double>& kept, double from,
                               double to, double least);

} // namespace bedbow
