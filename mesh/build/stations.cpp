#include "mesh/build/stations.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bedbow {

namespace {

void add_joint_places(const Machine& m, std::vector<double>& x) {
  m.each_joint_list([&](JointKind, const auto& list) {
    for (const JointBase& j : list) x.push_back(j.at.x());
  });
  for (const auto& s : m.screws) x.insert(x.end(), s.x.begin(), s.x.end());
  for (const auto& w : m.welds) x.insert(x.end(), {w.from, w.to}); // what is left out drops out below
}

void add_load_places(const Machine& m, std::vector<double>& x) {
  for (const Load& l : m.loads) {
    if (l.on.kind != Ref::Kind::bar || l.kind == Load::Kind::pressure) continue;
    x.push_back(l.from.x());
    x.push_back(l.to.x());
  }
}

/// Sorted; values within same_place are merged into their mean, so that mirrored places give mirrored ones.
std::vector<double> distinct_places(std::vector<double> x) {
  std::ranges::sort(x);
  std::vector<double> out;
  for (std::size_t i = 0, next = 0; i < x.size(); i = next) {
    while (next < x.size() && x[next] - x[i] <= same_place) ++next;
    out.push_back(std::midpoint(x[i], x[next - 1]));
  }
  return out;
}

} // namespace

std::vector<double> make_stations(const Machine& m, const std::vector<double>& extra) {
  std::vector<double> x = extra;
  for (const Body& b : m.bodies)
    for (const Bar& bar : b.bars) {
      x.push_back(bar.start);
      x.push_back(bar.end());
    }
  if (m.sheet) {
    x.push_back(m.sheet->left());
    x.push_back(m.sheet->right());
  }
  if (m.fingers)
    for (std::size_t i = 0; i < m.fingers->widths.size(); ++i)
      x.push_back(m.fingers->starts[i] + m.fingers->widths[i] / 2);
  add_joint_places(m, x);
  add_load_places(m, x);
  std::erase_if(x, [](double v) { return !std::isfinite(v); });
  std::vector<double> out;
  for (double v : distinct_places(std::move(x))) {
    if (!out.empty()) {
      const double from = out.back();
      // Slack, so that 900 mm by 15 mm makes 60 pieces, not 61, whatever the last digits of either end are.
      const double run = v - from - 2 * same_place;
      const int pieces = std::max(1, static_cast<int>(std::ceil(run / m.solve.element_size)));
      for (int i = 1; i < pieces; ++i) out.push_back(from + (v - from) * i / pieces);
    }
    out.push_back(v);
  }
  return out;
}

int station_at(const std::vector<double>& stations, double x) {
  auto it = std::lower_bound(stations.begin(), stations.end(), x - same_place);
  if (it == stations.end() || std::abs(*it - x) > same_place) return -1;
  return static_cast<int>(it - stations.begin());
}

} // namespace bedbow
