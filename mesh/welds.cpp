#include "mesh/welds.h"

#include "mesh/places.h"
#include "mesh/stations.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

void add_weld(const Machine& machine, const Weld& w, Mesh& mesh) {
  const Bar& one = machine.bar(w.joins[0]);
  const Bar& other = machine.bar(w.joins[1]);
  double from = std::max(one.start, other.start);
  double to = std::min(one.end(), other.end());
  if (std::isfinite(w.from)) from = std::max(from, w.from);
  if (std::isfinite(w.to)) to = std::min(to, w.to);
  const Eigen::Vector3d at = complete_place(machine, mesh, w.joins, w.at);
  // Beam nodes of a bar at a station, or the plate's row nearest to the point.
  const auto node_at = [&](const Ref& bar, double x) {
    return main_node(place_on_bar(machine, mesh, bar, {x, at.y(), at.z()}));
  };
  for (double x : mesh.stations)
    if (x >= from - same_place && x <= to + same_place)
      mesh.rigid_links.push_back({node_at(w.joins[0], x), node_at(w.joins[1], x)});
}

} // namespace bedbow
