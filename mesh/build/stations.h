/// \file
/// The common grid of x-stations: every bar has a node at each station on it, so that all joints meet node to node.
#pragma once

#include "mesh/machine/machine.h"

#include <vector>

namespace bedbow {

/// Places closer than this are one [m].
inline constexpr double same_place = 1e-7;

/// Stations in ascending order: ends of bars and sheet, every joint, load, and join of members or panels, with the
/// intervals between them divided evenly into pieces no longer than the element size.
/// \param extra further x that must be stations.
std::vector<double> make_stations(const Machine& machine, const std::vector<double>& extra);

/// Index of the station at x (within same_place), or -1.
int station_at(const std::vector<double>& stations, double x);

} // namespace bedbow
