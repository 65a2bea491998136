#include "solver/study/sensitivity.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Central difference over +-reach; nothing where a neighbour can't be solved.
std::optional<Watched> slope(const Moved& moved, double reach) {
  const auto up = moved(reach);
  const auto down = moved(-reach);
  if (!up || !down) return std::nullopt;
  Watched out{};
  for (std::size_t k = 0; k < out.size(); ++k) out[k] = ((*up)[k] - (*down)[k]) / (2 * reach);
  return out;
}

} // namespace

Watched watched_of(const StepResult& s) {
  return {s.bow.bow[0], s.bow.bow[1], s.bow.bow[2], s.bow.angle_spread};
}

Sensitivity sensitivity(const std::string& name, const Watched& base, double step, double reach, const Moved& moved) {
  Sensitivity out;
  out.name = name;
  out.step = step;
  const auto wide = slope(moved, reach);
  const auto narrow = slope(moved, reach / 2);
  out.solved = wide && narrow;
  if (!out.solved) return out;
  for (std::size_t k = 0; k < base.size(); ++k) {
    out.change[k] = (*narrow)[k] * step;
    out.error[k] = std::abs((*wide)[k] - (*narrow)[k]) * step;
    const double share = base[k] != 0 ? std::abs(out.change[k] / base[k]) : 0;
    if (std::isfinite(share)) out.weight = std::max(out.weight, share);
  }
  return out;
}

void sort_by_weight(std::vector<Sensitivity>& list) {
  std::ranges::stable_sort(list, [](const Sensitivity& a, const Sensitivity& b) {
    if (a.solved != b.solved) return a.solved;
    return a.weight > b.weight;
  });
}

} // namespace bedbow
