#include "solver/findings/limited.h"

#include "solver/findings/nose_hold.h"

#include <cmath>

namespace bedbow {

namespace {

Limited bow_of(BodyKind body) {
  const auto in_step = [body](const StepResult& s) {
    if (body == BodyKind::apron && !judges_bend(s)) return StepValue{};
    return StepValue{s.bow.bow[static_cast<std::size_t>(body)]};
  };
  return {&Limits::bow, Quantity::length, to_string(body) + " bow", Failure::bows, to_string(body), "bow", in_step};
}

StepValue angle_spread(const StepResult& s) {
  return judges_bend(s) ? StepValue{s.bow.angle_spread} : StepValue{};
}

StepValue nose_opening(const StepResult& s) {
  const NoseHold h = nose_hold(s.bend_line);
  return h.held > 0 ? StepValue{h.opening, h.opening_x} : StepValue{};
}

} // namespace

const std::vector<Limited>& limited_values() {
  static const std::vector<Limited> all{
      bow_of(BodyKind::clamp),
      bow_of(BodyKind::bed),
      bow_of(BodyKind::apron),
      {&Limits::angle, Quantity::angle, "spread of the bend angle", Failure::bows, "bend angle", "bend angle",
       angle_spread},
      {&Limits::nose_opening, Quantity::length, "nose opening", Failure::moves, "nose", "nose opening", nose_opening},
  };
  return all;
}

Peak greatest(const Limited& limited, const std::vector<StepResult>& steps) {
  Peak out;
  for (const StepResult& s : steps)
    if (const StepValue here = limited.in_step(s); !std::isnan(here.value)) out.look(here.value, s.name, here.x);
  return out;
}

} // namespace bedbow
