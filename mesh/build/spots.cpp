#include "mesh/build/spots.h"

#include "mesh/build/stations.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// The station nearest to `at` within `reach`: of two equally near ones the one towards `middle`, and both where `at`
/// is the middle itself, so that left and right are alike.
void add_nearest(const std::vector<double>& stations, double at, double reach, double middle,
                 std::vector<double>& out) {
  const auto right = std::ranges::lower_bound(stations, at);
  const double to_right = right == stations.end() ? reach + 1 : *right - at;
  const double to_left = right == stations.begin() ? reach + 1 : at - *(right - 1);
  if (std::min(to_left, to_right) > reach + same_place) return;
  const bool tie = std::abs(to_left - to_right) <= same_place;
  if (tie ? at <= middle + same_place : to_right < to_left) out.push_back(*right);
  if (tie ? at >= middle - same_place : to_left < to_right) out.push_back(*(right - 1));
}

/// Adds stations between `a` and `b`: as many equal cells as are not shorter than `least`, the first and last of them
/// halves that belong to `a` and `b`; each other takes the station nearest to its middle.
void fill(const std::vector<double>& stations, double a, double b, double least, std::vector<double>& out) {
  const int cells = static_cast<int>(std::floor((b - a + same_place) / least));
  const double cell = (b - a) / cells;
  for (int i = 1; i < cells; ++i) add_nearest(stations, a + i * cell, cell / 2, (a + b) / 2, out);
}

} // namespace

std::vector<Spot> choose_spots(const std::vector<double>& stations, const std::vector<double>& kept, double from,
                               double to, double least) {
  std::vector<double> x{from};
  for (const double k : kept)
    if (k > x.back() + same_place && k < to - same_place) x.push_back(k);
  if (to > from) x.push_back(to);
  const std::size_t firm = x.size();
  for (std::size_t i = 0; i + 1 < firm; ++i) fill(stations, x[i], x[i + 1], least, x);
  std::ranges::sort(x);
  x.erase(std::unique(x.begin(), x.end()), x.end()); // a station between two cells may have been taken for both
  std::vector<Spot> spots;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double left = i == 0 ? from : (x[i - 1] + x[i]) / 2;
    const double right = i + 1 == x.size() ? to : (x[i] + x[i + 1]) / 2;
    spots.push_back({x[i], right - left});
  }
  return spots;
}

} // namespace bedbow
