#include "io/explain/explain.h"

#include "io/explain/explain_parts.h"
#include "io/files/errors.h"
#include "io/text/text.h"
#include "mesh/piece/si.h"

#include <set>

namespace bedbow {

namespace {

constexpr int columns = 110;

std::string asked_angles(const Machine& m) {
  std::string out;
  if (!m.solve.angles) return usual_angles;
  for (double a : *m.solve.angles) out.append(out.empty() ? "" : ", ").append(short_number(si::in_degrees(a)));
  return out + " deg";
}

std::string explain_question(const CaseFormatter& t, const std::vector<std::string>& found, const Style& style) {
  const Machine& m = t.machine();
  std::string out = style.bold("Analysis") + "\n";
  if (m.sheet) out += "  clamp, then bend at " + asked_angles(m) + "\n";
  if (!m.sheet) out += "  one step \"load\", since there is no sheet\n";
  const std::string limits = limit_words(m.limits, t.what().output);
  out += "  limits: " + (limits.empty() ? "none given; only strength and nose opening are checked" : limits) + "\n";
  if (m.solve.modes > 0) out += "  natural frequencies: " + std::to_string(m.solve.modes) + "\n";
  if (m.solve.buckling > 0) out += "  buckling factors: " + std::to_string(m.solve.buckling) + "\n";
  if (m.solve.dimension == 2) out += "  in the x-z plane only\n";
  for (const std::string& line : found) out += "  " + printable(line) + "\n";
  return out + "\n";
}

std::string explain_assumptions(const Case& c, const Style& style) {
  if (c.assumptions.empty()) return "";
  std::string out = style.bold("Assumptions") + "\n";
  std::set<std::string> told;
  for (const std::string& a : c.assumptions)
    if (told.insert(a).second) out += list_item(printable(a), columns, "  ");
  return out + "\n";
}

std::string explain_warnings(const Case& c, const Style& style) {
  if (c.warnings.empty()) return "No problems found.\n";
  std::string out = style.bold("Doubtful") + "\n";
  for (const Problem& p : c.warnings) out += "  " + to_string(p, c.source.file) + "\n";
  return out;
}

} // namespace

std::string limit_words(const Limits& limits, const OutputUnits& units, bool of_steps_only) {
  std::string out;
  for (const LimitKind& kind : limit_kinds)
    if (const std::optional<double>& limit = limits.*kind.member; limit && (kind.of_steps || !of_steps_only))
      out.append(out.empty() ? "" : ", ").append(kind.name) += " " + short_text(*limit, kind.of, units);
  return out;
}

std::string explain(const Case& c, const std::vector<std::string>& found, const Style& style) {
  const CaseFormatter t(c);
  return style.bold(printable(c.machine.title)) + " (" + printable(c.source.file) + ")\n\n" + explain_bodies(t, style) +
         explain_sheet(t, style) + explain_joints(t, style) + explain_structure(t, style) +
         explain_question(t, found, style) + explain_assumptions(c, style) + explain_warnings(c, style);
}

} // namespace bedbow
