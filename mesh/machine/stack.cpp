#include "mesh/machine/stack.h"

#include "mesh/machine/bar_box.h"

#include <cmath>

namespace bedbow {

namespace {

/// Places one bar against the box of its neighbour; false where either has no size yet.
bool place(Bar& bar, const Bar& other, const Registry<ShapeEntry>& shapes) {
  const auto own = shape_box(bar.shape, shapes);
  const auto box = bar_box(other, shapes);
  if (!own || !box) return false;
  const bool upright = bar.stack->side == Stack::Side::on || bar.stack->side == Stack::Side::under;
  const bool greater = bar.stack->side == Stack::Side::on || bar.stack->side == Stack::Side::behind;
  const int k = upright ? 1 : 0;
  bar.at[k] = greater ? box->upper[k] - own->lower[k] : box->lower[k] - own->upper[k];
  if (!std::isfinite(bar.at[1 - k])) bar.at[1 - k] = other.at[1 - k];
  return true;
}

bool has_place(const std::vector<const Bar*>& waiting, const Bar& bar) {
  for (const Bar* w : waiting)
    if (w == &bar) return false;
  return true;
}

} // namespace

std::vector<Problem> apply_stacks(Machine& machine, const Registry<ShapeEntry>& shapes) {
  std::vector<Bar*> waiting;
  for (Body& body : machine.bodies)
    for (Bar& bar : body.bars)
      if (bar.stack) waiting.push_back(&bar);
  // Bars whose neighbour is placed go first, round after round.
  std::vector<Problem> problems;
  for (bool moved = true; moved && !waiting.empty();) {
    moved = false;
    for (std::size_t i = 0; i < waiting.size(); ++i) {
      const Bar& other = machine.bar(waiting[i]->stack->bar);
      if (!has_place({waiting.begin(), waiting.end()}, other)) continue;
      place(*waiting[i], other, shapes);
      waiting.erase(waiting.begin() + static_cast<std::ptrdiff_t>(i));
      moved = true;
      break;
    }
  }
  for (const Bar* bar : waiting)
    problems.push_back({Severity::error, bar->pos, "bar " + bar->name,
                        "its stack is circular: one bar of the circle needs a place `at` of its own"});
  return problems;
}

} // namespace bedbow
