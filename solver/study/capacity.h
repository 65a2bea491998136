/// \file
/// The thickest sheet that a machine bends within its limits, by width, place and material.
#pragma once

#include "solver/study/prepared.h"

#include <string>
#include <utility>
#include <vector>

namespace bedbow {

struct CapacityTask {
  std::vector<SheetPlace> places;
  std::vector<int> materials; ///< indices into the machine's materials
  double thinnest = 0.3e-3;   ///< [m]
  double thickest = 6e-3;     ///< upper bound of the search [m]
  double step = 0.01e-3;      ///< answers are whole multiples of it [m]
  int threads = 0;            ///< 0: all of the machine's
};

struct Capacity {
  SheetPlace place;
  int material = -1;
  double thickness = 0;   ///< NaN where even the thinnest is too much
  std::string limited_by; ///< limit exceeded by a sheet one step thicker, in words
};

struct CapacityTable {
  std::vector<Capacity> rows; ///< material by material, in the order of the places
  long load_cases = 0;        ///< steps solved
};

/// Range in which a sheet can lie, on both bed and clamp [m].
std::pair<double, double> bench_of(const Machine& machine);

/// Searches each place and material by itself; the machine is factored once per thread. Results do not depend on the
/// number of threads. Throws std::invalid_argument where the case has no limits.
CapacityTable find_capacity(const Machine& machine, const Registries& registries, const CapacityTask& task);

} // namespace bedbow
