#include "io/case/fault_text.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// A length or an angle of a fault.
std::string fault_figure(double value, const Fault& f, const OutputUnits& u) {
  return f.of == Quantity::angle ? degrees_text(value) : length_text(value, u, 1e-4);
}

std::string hole_text(const Fault& f, const std::string& value, const std::string& limit) {
  return "its hole lies " + value + " from the edge of " + f.other + ", at least " + limit +
         " are needed (EN 1993-1-8 Table 3.3: 1.2 times a clearance hole; around a thread as much metal as a nut "
         "has); " +
         "move it, or use a larger bar";
}

} // namespace

std::string fault_text(const Fault& f, const OutputUnits& u) {
  const std::string value = fault_figure(f.value, f, u), limit = fault_figure(f.limit, f, u);
  switch (f.kind) {
  case FaultKind::gap:
    return "it misses the bar " + f.other + ", to which it is joined, by " + value +
           ": joined bars must touch; place it by `stack`, or correct `at`";
  case FaultKind::overlap:
    return "it overlaps the bar " + f.other + ": two bars can't occupy the same place; check `at` and the sizes (" +
           value + " deep)";
  case FaultKind::off_bar:
    return "it stands " + value + " beside the bar " + f.other + " that it joins; move it, or use a larger bar";
  case FaultKind::edge_distance:
    return hole_text(f, value, limit);
  case FaultKind::pitch:
    return "its holes are " + value + " apart, at least " + limit +
           " are needed (EN 1993-1-8 Table 3.3: 2.2 times the hole)";
  case FaultKind::holes_meet:
    return "its hole runs into one of " + f.other + ": " + value + " between their axes, at least " + limit +
           " are needed; move one of the two";
  case FaultKind::pierces:
    return "it passes through " + f.other + ", which it does not join; move one of the two, or end the bar before it";
  case FaultKind::nut_room:
    return "its nut stands in " + f.other + ": " + value + " from its axis, the washer needs " + limit +
           "; move one of the two";
  case FaultKind::spanner_room:
    return "no spanner fits on its nut: " + f.other + " is " + value + " from its axis, at least " + limit +
           " are needed (common practice, no source); move one of the two";
  case FaultKind::stud_short:
    return "a stud of " + value + " is shorter than what lies between its nuts, " + limit + "; correct `free_length`";
  case FaultKind::in_sheet:
    return "it stands in " + f.other + "; move it beside the sheet, or a post behind the nose";
  case FaultKind::flange_off_face:
    return "the sheet bears on it at " + limit + " from the bend line, but it ends at " + value +
           "; use a deeper bar, or a shorter flange";
  case FaultKind::face_off_line:
    return "its face lies " + fault_figure(std::abs(f.value), f, u) + (f.value > 0 ? " above" : " below") +
           " the top of the bed, on which the sheet lies; correct `at`";
  case FaultKind::edge_off_line:
    return "the bed's front top edge lies " + value + " off the bend line; correct `at`: y = 0 and z = 0 are that edge";
  case FaultKind::nose_off_sheet:
    return "its lower face is " + value + " above " + f.other + "; draw the clamp as it lies on the sheet";
  case FaultKind::nose_off_bar:
    return "the land of " + f.other + " is " + value + " beside it; correct `setback`, `land` or `at`";
  case FaultKind::cam_before_post:
    return "it lies " + (f.value < 0 ? fault_figure(-f.value, f, u) + " in front of " : "no further back than ") +
           f.other + ": it would lift the nose; cams belong behind the posts";
  case FaultKind::hinge_off_line:
    return "its pin is " + value + " off the bend line, about which the apron swings; omit y and z";
  case FaultKind::setback:
    return "it stands " + value + " behind the bend line, and " + f.other + " needs " + limit + "; move the clamp back";
  case FaultKind::swing:
    return "it meets " + f.other + " at " + value + " of " + limit + "; use a smaller bar for one of the two";
  }
  return {};
}

std::string faults_line(const std::vector<Fault>& faults, const OutputUnits& units, std::size_t most) {
  std::vector<Fault> order = faults;
  std::ranges::stable_sort(order, {}, &Fault::tight);
  std::string out;
  for (std::size_t i = 0; i < order.size() && i < most; ++i)
    out += (i > 0 ? "; " : "") + order[i].part + ": " + fault_text(order[i], units);
  if (order.size() > most) out += "; and " + std::to_string(order.size() - most) + " more";
  return out;
}

} // namespace bedbow
