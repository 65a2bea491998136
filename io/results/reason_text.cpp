#include "io/results/reason_text.h"

#include "io/text/step_label.h"

namespace bedbow {

std::string reason_text(const Reason& r, const OutputUnits& u) {
  const std::string value = figure_text(r.value, r.of, u), limit = figure_text(r.limit, r.of, u);
  const std::string step = step_label(r.step);
  if (r.check == "buckling")
    return "buckles at " + value + " times the load of step " + step + " (" + r.part + "), limit " + limit + " times";
  const std::string tail = " in step " + step + ", limit " + limit;
  if (r.check == "bow") return r.part + " bows " + value + tail;
  if (r.check == "bend angle") return r.part + " varies by " + value + tail;
  if (r.check == "nose opening")
    return "the nose opens by " + value + " over the sheet at x = " + length_text(r.x, u, 1e-3) + tail;
  if (r.check == "deviation")
    return "the bend angle deviates by " + value + " at x = " + length_text(r.x, u, 1e-3) + tail +
           " of small-displacement theory";
  if (r.check == "displacement") return r.part + " is displaced by " + value + tail;
  if (r.check == "rotation") return r.part + " turns by " + value + tail;
  if (r.of != Quantity::ratio) return r.part + ": " + r.check + " " + value + tail;
  return r.part + " reaches a utilisation of " + value + (r.check.empty() ? "" : " (" + r.check + ")") + tail;
}

std::vector<std::string> reason_text(const std::vector<Reason>& reasons, const OutputUnits& units) {
  std::vector<std::string> out;
  for (const Reason& r : reasons) out.push_back(reason_text(r, units));
  return out;
}

std::string reasons_line(const std::vector<Reason>& reasons, const OutputUnits& units) {
  std::string out;
  for (const Reason& r : reasons) out += (out.empty() ? "" : "; ") + reason_text(r, units);
  return out;
}

} // namespace bedbow
