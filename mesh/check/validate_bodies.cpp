#include "mesh/check/validate_parts.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

void validate_bar(Validator& v, const Body& body, const Bar& bar) {
  if (bar.model != BarModel::beam && bar.shape.kind != "rectangle" && !bar.shape.kind.empty())
    v.error(bar.pos, bar_key(body.kind, bar),
            "model = \"" + std::string(choice_of(bar_models, bar.model).word) + "\" is for rectangles; a " +
                bar.shape.kind + " is a beam");
  const double body_end = body.start + body.length;
  const bool outside = bar.end() <= body.start + same_length || bar.start >= body_end - same_length;
  if (outside)
    v.error(bar.pos, bar_key(body.kind, bar),
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
  validate_element_size(v);
}

} // namespace bedbow
