#include "mesh/machine/contacts.h"

#include "mesh/machine/bar_box.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace bedbow {

namespace {

/// The side of `other` on which a bar touches it with a face; nullopt where it does not.
std::optional<Stack::Side> side_touched(const BarBox& bar, const BarBox& other, double slack) {
  const Eigen::Vector2d overlap = bar.upper.cwiseMin(other.upper) - bar.lower.cwiseMax(other.lower);
  using enum Stack::Side;
  if (overlap.x() > slack && std::abs(bar.lower.y() - other.upper.y()) <= slack) return on;
  if (overlap.x() > slack && std::abs(bar.upper.y() - other.lower.y()) <= slack) return under;
  if (overlap.y() > slack && std::abs(bar.lower.x() - other.upper.x()) <= slack) return behind;
  if (overlap.y() > slack && std::abs(bar.upper.x() - other.lower.x()) <= slack) return before;
  return std::nullopt;
}

bool joined(const Machine& m, const Ref& a, const Ref& b) {
  const auto joins = [&](const JointBase& j) {
    return (j.joins[0] == a && j.joins[1] == b) || (j.joins[0] == b && j.joins[1] == a);
  };
  return std::ranges::any_of(m.welds, joins) || std::ranges::any_of(m.screws, joins);
}

/// Whether following stacks from a bar leads to another: then that one can't rest on it.
bool rests_on(const Machine& m, Ref bar, const Ref& other) {
  for (std::size_t steps = 0; steps < 100; ++steps) {
    if (bar == other) return true;
    const auto& stack = m.bar(bar).stack;
    if (!stack) return false;
    bar = stack->bar;
  }
  return true;
}

} // namespace

void stack_what_touches(Machine& m, const Registry<ShapeEntry>& shapes, double slack) {
  for (Body& body : m.bodies) {
    if (!body.present()) continue;
    const auto ref = [&](std::size_t i) { return Ref{Ref::Kind::bar, body.kind, static_cast<int>(i)}; };
    const int first = body.edge_bar >= 0 ? body.edge_bar : bar_nearest_bend_line(body, shapes);
    if (first < 0) continue;
    // From the bend line outwards.
    std::vector<std::size_t> reached{static_cast<std::size_t>(first)};
    for (std::size_t k = 0; k < reached.size(); ++k) {
      const auto box = bar_box(body.bars[reached[k]], shapes);
      for (std::size_t i = 0; i < body.bars.size() && box; ++i) {
        if (std::ranges::find(reached, i) != reached.end() || !joined(m, ref(i), ref(reached[k]))) continue;
        const auto own = bar_box(body.bars[i], shapes);
        const auto side = own ? side_touched(*own, *box, slack) : std::nullopt;
        if (!side) continue;
        reached.push_back(i);
        Bar& bar = body.bars[i];
        if (!bar.stack && !rests_on(m, ref(reached[k]), ref(i))) bar.stack = Stack{*side, ref(reached[k])};
      }
    }
  }
}

} // namespace bedbow
