#include "mesh/check/validate_parts.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

std::string key_of(const Body& body, const Bar& bar) {
  return to_string(body.kind) + ".bar." + bar.name;
}

/// Whether two bars overlap: by more than the slack in both directions of the section, and along x.
bool overlap(const Bar& a, const BarBox& box_a, const Bar& b, const BarBox& box_b) {
  constexpr double slack = 1e-6;
  const double along = std::min(a.end(), b.end()) - std::max(a.start, b.start);
  const Eigen::Vector2d across = box_a.upper.cwiseMin(box_b.upper) - box_a.lower.cwiseMax(box_b.lower);
  return along > slack && across.minCoeff() > slack;
}

/// Shapes that fill their bounding box, so that overlapping boxes mean overlapping material.
bool solid(const Shape& s) {
  const double quarter = s.turn / 1.5707963267948966;
  const bool straight = std::abs(quarter - std::round(quarter)) < 1e-9;
  return straight && (s.kind == "rectangle" || s.kind == "tube");
}

void validate_overlaps(Validator& v) {
  struct Placed {
    const Body* body;
    const Bar* bar;
    const BarBox* box;
  };
  std::vector<Placed> all;
  for (const Body& body : v.machine.bodies)
    for (std::size_t i = 0; i < body.bars.size(); ++i)
      if (const auto& box = v.boxes[static_cast<std::size_t>(body.kind)][i]; box && solid(body.bars[i].shape))
        all.push_back({&body, &body.bars[i], &*box});
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (overlap(*all[i].bar, *all[i].box, *all[j].bar, *all[j].box))
        v.warning(all[i].bar->pos, key_of(*all[i].body, *all[i].bar),
                  "it overlaps the bar " + to_string(all[j].body->kind) + "." + all[j].bar->name +
                      ": two bars can't occupy the same place; check `at` and the sizes");
}

void validate_bar(Validator& v, const Body& body, const Bar& bar) {
  if (bar.model != BarModel::beam && bar.shape.kind != "rectangle" && !bar.shape.kind.empty())
    v.error(bar.pos, key_of(body, bar),
            "model = \"" + std::string(choice_of(bar_models, bar.model).word) + "\" is for rectangles; a " +
                bar.shape.kind + " is a beam");
  const double body_end = body.start + body.length;
  const bool outside = bar.end() <= body.start + same_length || bar.start >= body_end - same_length;
  if (outside)
    v.error(bar.pos, key_of(body, bar),
            "it extends from x = " + in_mm(bar.start) + " to " + in_mm(bar.end()) + ", but the " +
                to_string(body.kind) + " from " + in_mm(body.start) + " to " + in_mm(body_end));
}

/// Elements so small that the solution would take too long.
void validate_element_size(Validator& v) {
  constexpr double most = 200000;
  for (const Body& body : v.machine.bodies)
    if (body.present() && body.length / v.machine.solve.element_size > most)
      v.error(body.pos, "solve.element_size",
              in_mm(v.machine.solve.element_size) + " makes more than 200000 elements along the " +
                  to_string(body.kind) + "; about a hundredth of its length is enough");
}

} // namespace

void validate_bodies(Validator& v) {
  for (const Body& body : v.machine.bodies)
    for (const Bar& bar : body.bars) validate_bar(v, body, bar);
  validate_overlaps(v);
  validate_element_size(v);
}

} // namespace bedbow
