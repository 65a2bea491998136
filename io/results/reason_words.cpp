#include "io/results/reason_words.h"

#include "io/text/step_label.h"
#include "io/units/quantities_out.h"

namespace bedbow {

namespace {

std::string quantity(double value, ReasonOf of, const OutputUnits& u) {
  switch (of) {
  case ReasonOf::length:
    return in_unit(value, u.length, 1e-6) + " " + u.length.name;
  case ReasonOf::angle:
    return fixed(to_deg(value), 3) + " deg";
  case ReasonOf::force:
    return in_unit(value, u.force, 1) + " " + u.force.name;
  case ReasonOf::ratio:
    break;
  }
  return fixed(value, 2);
}

} // namespace

std::string reason_words(const Reason& r, const OutputUnits& u) {
  const std::string value = quantity(r.value, r.of, u), limit = quantity(r.limit, r.of, u);
  const std::string step = step_label(r.step);
  if (r.check == "buckling")
    return "buckles at " + value + " times the load of step " + step + " (" + r.part + "), limit " + limit + " times";
  const std::string tail = " in step " + step + ", limit " + limit;
  if (r.check == "bow") return r.part + " bows " + value + tail;
  if (r.check == "bend angle") return r.part + " varies by " + value + tail;
  if (r.check == "nose opening")
    return "the nose opens by " + value + " over the sheet at x = " + in_unit(r.x, u.length, 1e-3) + " " +
           u.length.name + tail;
  if (r.check == "displacement") return r.part + " is displaced by " + value + tail;
  if (r.check == "rotation") return r.part + " turns by " + value + tail;
  return r.part + " reaches a utilisation of " + value + (r.check.empty() ? "" : " (" + r.check + ")") + tail;
}

std::vector<std::string> reason_words(const std::vector<Reason>& reasons, const OutputUnits& units) {
  std::vector<std::string> out;
  for (const Reason& r : reasons) out.push_back(reason_words(r, units));
  return out;
}

std::string reasons_line(const std::vector<Reason>& reasons, const OutputUnits& units) {
  std::string out;
  for (const Reason& r : reasons) out += (out.empty() ? "" : "; ") + reason_words(r, units);
  return out;
}

} // namespace bedbow
