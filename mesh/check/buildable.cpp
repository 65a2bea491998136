#include "mesh/check/buildable.h"

#include "mesh/check/drawing.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

std::vector<Fault> buildable(const Machine& machine, const Registry<ShapeEntry>& shapes, const Springback& springback) {
  if (machine.solve.dimension == 2) return {};
  Drawing d = drawing_of(machine, shapes);
  check_bars(d);
  check_holes(d);
  check_studs(d);
  check_cams_and_hinges(d);
  check_line(d, springback);
  std::ranges::stable_sort(d.faults, {}, &Fault::kind);
  return std::move(d.faults);
}

std::vector<Fault> new_faults(const std::vector<Fault>& faults, const std::vector<Fault>& drawn) {
  const auto as_bad = [](const Fault& now, const Fault& before) {
    // How far from right: both lie on the same side of their limits.
    const double worse = std::abs(now.value - now.limit) - std::abs(before.value - before.limit);
    return now.kind == before.kind && now.part == before.part && now.other == before.other && worse < 1e-9;
  };
  std::vector<Fault> out;
  for (const Fault& f : faults)
    if (std::ranges::none_of(drawn, [&](const Fault& d) { return as_bad(f, d); })) out.push_back(f);
  return out;
}

} // namespace bedbow
