#include "mesh/spots.h"

#include "mesh/stations.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Adds stations between `a` and `b`, from both sides by turns until no room is left between them.
void fill(const std::vector<double>& stations, double a, double b, double least, std::vector<double>& out) {
  const double step = least - same_place;
  while (true) {
    const auto left = std::ranges::lower_bound(stations, a + step);
    const auto beyond = std::ranges::upper_bound(stations, b - step);
    if (left >= beyond) return;
    a = *left;
    b = *(beyond - 1);
    out.push_back(a);
    if (b > a) out.push_back(b);
  }
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
  std::vector<Spot> spots;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double left = i == 0 ? from : (x[i - 1] + x[i]) / 2;
    const double right = i + 1 == x.size() ? to : (x[i] + x[i + 1]) / 2;
    spots.push_back({x[i], right - left});
  }
  return spots;
}

} // namespace bedbow
