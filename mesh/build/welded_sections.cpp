#include "mesh/build/welded_sections.h"

#include "mesh/build/places.h"
#include "mesh/build/stations.h"
#include "mesh/build/welds.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace bedbow {

namespace {

/// Boxes of the sections that bars make, by layout; bars that are welded to each other share one.
class WeldedSections {
public:
  WeldedSections(const Machine& machine, const Mesh& mesh)
      : machine_(machine)
      , mesh_(mesh) {}

  void join(const std::array<Ref, 2>& joins) {
    const int one = section_of(joins[0]), other = section_of(joins[1]);
    if (one == other) return;
    BarBox& box = boxes_[one];
    box.lower = box.lower.cwiseMin(boxes_[other].lower);
    box.upper = box.upper.cwiseMax(boxes_[other].upper);
    for (auto& [bar, section] : section_of_)
      if (section == other) section = one;
  }

  /// Lesser side of the section that a bar is part of; 0 for a bar that stands alone.
  [[nodiscard]] double depth(const Ref& bar) const {
    const auto found = std::ranges::find(section_of_, bar, &std::pair<Ref, int>::first);
    if (found == section_of_.end()) return 0;
    const BarBox& box = boxes_[found->second];
    return (box.upper - box.lower).minCoeff();
  }

private:
  int section_of(const Ref& bar) {
    const auto found = std::ranges::find(section_of_, bar, &std::pair<Ref, int>::first);
    if (found != section_of_.end()) return found->second;
    boxes_.push_back(box_of(machine_, mesh_, bar));
    return section_of_.emplace_back(bar, static_cast<int>(boxes_.size()) - 1).second;
  }

  const Machine& machine_;
  const Mesh& mesh_;
  std::vector<std::pair<Ref, int>> section_of_;
  std::vector<BarBox> boxes_;
};

} // namespace

void measure_welded_sections(const Machine& machine, std::span<const Weld> welds, Mesh& mesh) {
  if (welds.empty()) return;
  std::vector<SeamSpan> seams;
  for (const Weld& w : welds) seams.push_back(seam_span(machine, w));
  std::map<std::vector<bool>, WeldedSections> known; // by the seams that run there
  for (BarLayout& l : mesh.layouts) {
    if (l.owner.kind != Ref::Kind::bar || !l.across.empty()) continue;
    l.welded_depth.assign(l.stations.size() - 1, 0);
    for (std::size_t i = 0; i + 1 < l.stations.size(); ++i) {
      std::vector<bool> runs(seams.size());
      for (std::size_t k = 0; k < seams.size(); ++k)
        runs[k] = seams[k].from <= l.stations[i] + same_place && seams[k].to >= l.stations[i + 1] - same_place;
      const auto [it, fresh] = known.try_emplace(runs, machine, mesh);
      for (std::size_t k = 0; fresh && k < seams.size(); ++k)
        if (runs[k]) it->second.join(welds[k].joins);
      l.welded_depth[i] = it->second.depth(l.owner);
    }
    if (std::ranges::all_of(l.welded_depth, [](double d) { return d == 0; })) l.welded_depth.clear();
  }
}

} // namespace bedbow
