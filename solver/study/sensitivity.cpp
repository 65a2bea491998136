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

/// One-sided difference of second order over side * h; nothing where a neighbour can't be solved.
std::optional<Watched> one_sided(const Moved& moved, const Watched& base, double h) {
  const auto near = moved(h);
  const auto far = moved(2 * h);
  if (!near || !far) return std::nullopt;
  Watched out{};
  for (std::size_t k = 0; k < out.size(); ++k) out[k] = (4 * (*near)[k] - (*far)[k] - 3 * base[k]) / (2 * h);
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
  auto wide = slope(moved, reach);
  auto narrow = slope(moved, reach / 2);
  for (const double side : {1.0, -1.0}) {
    if (wide && narrow) break;
    out.one_way = true;
    wide = one_sided(moved, base, side * reach);
    narrow = one_sided(moved, base, side * reach / 2);
  }
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
