#include "mesh/machine/machine.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

std::string to_string(BodyKind body) {
  return word_for(body_choices, body);
}

double Crown::at(double where) const {
  if (x.empty()) return 0;
  const auto after = std::ranges::upper_bound(x, where);
  if (after == x.begin()) return height.front();
  if (after == x.end()) return height.back();
  const auto i = static_cast<std::size_t>(after - x.begin());
  return std::lerp(height[i - 1], height[i], (where - x[i - 1]) / (x[i] - x[i - 1]));
}

double cam_lift(double throw_, double angle, double touch) {
  return throw_ / 2 * (std::cos(touch) - std::cos(angle));
}

const Bar& Machine::bar(const Ref& r) const {
  return body(r.body).bars.at(r.index);
}

std::string Machine::name_of(const Ref& r) const {
  switch (r.kind) {
  case Ref::Kind::none:
    return "nothing";
  case Ref::Kind::ground:
    return "ground";
  case Ref::Kind::bar:
    return to_string(r.body) + "." + bar(r).name;
  case Ref::Kind::member:
    return "member " + members.at(r.index).name;
  case Ref::Kind::panel:
    return "panel " + panels.at(r.index).name;
  case Ref::Kind::own:
    return own.parts.at(r.index).empty() ? "mesh" : "mesh." + own.parts.at(r.index);
  }
  return "?";
}

std::string Machine::plain_name(const Ref& r) const {
  if (r.kind == Ref::Kind::member) return members.at(r.index).name;
  if (r.kind == Ref::Kind::panel) return panels.at(r.index).name;
  return name_of(r);
}

} // namespace bedbow
