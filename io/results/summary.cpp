#include "io/results/summary.h"

#include "io/results/arm_seats_table.h"
#include "io/results/friction_table.h"
#include "io/results/modes_table.h"
#include "io/results/reason_text.h"
#include "io/results/result_tables.h"
#include "io/results/slip_bounds_table.h"
#include "io/text/text.h"
#include "mesh/piece/si.h"

#include <cmath>

namespace bedbow {

namespace {

using si::degree;
constexpr int width = 98;

std::string sheet_line(const SheetResult& s) {
  const Springback& b = s.springback;
  return "Sheet: moment " + fixed(s.moment, 1) + " N mm/mm, apron push " + fixed(s.apron * 1e-3, 2) + " N/mm, grip " +
         fixed(s.grip * 1e-3, 2) + " N/mm, springback " + fixed(b.sum() / degree, 2) + " deg\n" +
         list_item("moment by the law " + printable(s.law) + ": " + printable(s.why), width, "  - ") +
         list_item("springback: the bend " + fixed(b.arc / degree, 2) + ", the flange " + fixed(b.flange / degree, 2) +
                       ", the sheet under the nose " + fixed(b.grip / degree, 2) + " deg",
                   width, "  - ");
}

std::string hold_lines(const Findings& f, const OutputUnits& u) {
  std::string out;
  for (const std::string& line : hold_words(f, u)) out += list_item(line, width, "  - ");
  return out.empty() ? out : "Clamping\n" + out + "\n";
}

std::string items(const std::string& head, const std::vector<std::string>& list) {
  if (list.empty()) return "";
  std::string out = head.empty() ? "" : head + "\n";
  for (const std::string& i : list) out += list_item(printable(i), width, "  - ");
  return out;
}

} // namespace

std::vector<std::string> cautions() {
  return {"Posts and cams hold stored force, nose and apron pinch, overloaded studs break without warning.",
          "A computed result does not prove a machine safe: local codes and licensed practice come first."};
}

std::string summary(const Findings& f, const OutputUnits& units, const Style& style,
                    const std::vector<std::string>& assumptions) {
  std::string out = style.bold(printable(f.title)) + "\n\n";
  if (f.sheet) out += sheet_line(*f.sheet) + "\n";
  if (f.sheet) {
    out += "Bow over the sheet width [" + units.length.name + "], bend angle [deg]\n" +
           bow_table(f, units).render(style) + "\n";
  } else if (const TextTable bow = whole_bow_table(f, units); !bow.empty()) {
    out += "Bow of each body's edge over its whole length [" + units.length.name + "]\n" + bow.render(style) + "\n";
  }
  if (const TextTable friction = friction_rows(f, units); !friction.empty())
    out += friction_title(units) + "\n" + friction.render(style) + items("", friction_troubles(f)) + "\n";
  if (const auto words = sheet_hold_words(f, units); !words.empty()) out += items(sheet_hold_title(f), words) + "\n";
  if (f.slip_bounds) out += slip_bounds_table(f, units, style) + "\n";
  if (const TextTable arms = arm_seats_rows(f, units); !arms.empty())
    out += arm_seats_title(units) + "\n" + arms.render(style) + "\n";
  out += hold_lines(f, units);
  if (const TextTable dials = dial_table(f, units); !dials.empty())
    out += "Dials, displacement [" + units.length.name + "]\n" + dials.render(style) + "\n";
  if (const TextTable loads = load_table(f, units); !loads.empty())
    out += "Greatest load and highest utilisation of each part\n" + loads.render(style);
  out += items(thrust_title, thrust_words(f, units));
  out += items(local_peak_title(), local_peak_words(f, units));
  out += items("Expected wear and damage", load_remarks(f));
  out += "\n";
  if (f.modes) out += modes_table(*f.modes, style) + "\n";
  out += "Verdict: " + (f.verdict.pass ? style.good("within the limits") : style.bad("a limit is exceeded")) + "\n";
  for (const std::string& r : reason_text(f.verdict.reasons, units)) out += list_item(printable(r), width, "  - ");
  out += mass_words(f) + "\n";
  std::vector<std::string> assumed = f.assumptions;
  assumed.insert(assumed.end(), assumptions.begin(), assumptions.end());
  out += items("Assumptions", assumed);
  out += items("Allowable values and their sources", allowable_sources(f));
  out += items("Warnings and limitations", f.warnings);
  out += "\n";
  for (const std::string& line : cautions()) out += line + "\n";
  return out;
}

} // namespace bedbow
