#include "io/report/report_solve.h"

#include "io/draw/bend_line_plots.h"
#include "io/explain/explain.h"
#include "io/report/report_machine.h"
#include "io/results/arm_seats_table.h"
#include "io/results/friction_table.h"
#include "io/results/reason_text.h"
#include "io/results/result_tables.h"
#include "io/results/slip_bounds_table.h"
#include "io/text/step_label.h"
#include "io/units/quantities_out.h"
#include "solver/findings/limited.h"

namespace bedbow {

namespace {

using Outcome = ReportCheck::Outcome;

PartPeaks most_used(const Findings& f) {
  PartPeaks most;
  for (PartPeaks& p : part_peaks(f.steps))
    if (clearly_greater(p.use.value, most.use.value)) most = std::move(p);
  return most;
}

/// The main results, without comparison with limits.
std::string figures(const Case& c, const Findings& f) {
  std::string spread, bows;
  for (const Limited& l : limited_values()) {
    const Peak p = greatest(l, f.steps);
    if (!f.sheet || p.step.empty()) continue;
    const std::string value = figure_text(p.value, l.of, c.output);
    if (l.limit == &Limits::angle)
      spread = "the bend angle varies by " + value + " along the sheet at worst (" + step_label(p.step) + ")";
    if (l.limit == &Limits::bow) bows += (bows.empty() ? "the greatest bows are: " : ", ") + l.part + " " + value;
  }
  std::string out = spread + (spread.empty() || bows.empty() ? "" : ", ") + bows;
  if (const PartPeaks used = most_used(f); used.use.value > 0)
    out += (out.empty() ? "" : "; ") + ("the highest utilisation is " + percent(used.use.value)) + " (" + used.label() +
           ")";
  return out.empty() ? "there is no result to compare" : out;
}

TextTable sheet_table(const SheetResult& s) {
  TextTable t({{"", Align::left}, {"value"}, {"unit", Align::left}});
  t.row({"bending moment per width", fixed(s.moment, 1), "N mm/mm"});
  t.row({"push of the apron", fixed(to_N_per_mm(s.apron), 2), "N/mm"});
  t.row({"grip force behind the nose", fixed(to_N_per_mm(s.grip), 2), "N/mm"});
  t.row({"springback in all", fixed(to_deg(s.springback.sum()), 2), "deg"});
  t.row({"of the bend", fixed(to_deg(s.springback.arc), 2), "deg"});
  t.row({"of the flange", fixed(to_deg(s.springback.flange), 2), "deg"});
  t.row({"of the sheet under the nose", fixed(to_deg(s.springback.grip), 2), "deg"});
  return t;
}

} // namespace

std::string solve_answer(const Case& c, const Findings& f) {
  const bool judged = any_limit_of_steps(c.machine.limits);
  if (!judged && f.verdict.pass) return "No limit is set: " + figures(c, f) + ".";
  if (f.verdict.pass) return "Within the limits: " + figures(c, f) + ".";
  std::string why = f.verdict.reasons.empty() ? figures(c, f) : reason_text(f.verdict.reasons.front(), c.output);
  if (f.verdict.reasons.size() > 1) why += ", and " + std::to_string(f.verdict.reasons.size() - 1) + " more below";
  return "A limit is exceeded: " + why + ".";
}

std::vector<ReportCheck> solve_checks(const Case& c, const Findings& f) {
  const Limits& limits = c.machine.limits;
  const OutputUnits& u = c.output;
  std::vector<ReportCheck> out;
  for (const Limited& l : limited_values()) {
    const std::optional<double>& limit = limits.*l.limit;
    const Peak p = greatest(l, f.steps);
    if (!f.sheet || p.step.empty()) continue;
    const Outcome outcome = !limit ? Outcome::no_limit : p.value > *limit ? Outcome::fail : Outcome::pass;
    out.push_back({l.name, figure_text(p.value, l.of, u), limit ? figure_text(*limit, l.of, u) : "-",
                   step_label(p.step), outcome});
  }
  if (const PartPeaks p = most_used(f); p.use.value > 0) {
    const double limit = limit_or_usual(limits, &Limits::utilisation);
    out.push_back({"highest utilisation: " + p.label(), percent(p.use.value), percent(limit),
                   step_label(p.use.step) + ", x = " + length_text(p.use.x, u, 1e-3),
                   p.use.value > limit ? Outcome::fail : Outcome::pass});
  }
  return out;
}

void add_solve_checks(Report& r, const Case& c, const Findings& f) {
  r.checks = solve_checks(c, f);
  r.checks_note = "The limits are those of the case file; for the nose opening the default is " +
                  fixed(usual_nose_opening * 100, 0) +
                  " % of the sheet's thickness. Utilisation: actual over allowable value.";
}

Report solve_report(const Case& c, const Findings& f, const RunStamp& stamp) {
  const OutputUnits& u = c.output;
  Report r{f.title};
  r.answer = solve_answer(c, f);
  r.pass = f.verdict.pass;
  r.reasons = reason_text(f.verdict.reasons, u);
  add_solve_checks(r, c, f);
  r.stamp = stamp;
  add_case(r, c, f);
  add_machine(r, c.machine, f);
  if (auto plots = bend_line_plots(f, c.machine.limits, u); !plots.empty()) {
    r.sections.push_back({"Along the bend line"});
    r.sections.back().plots = std::move(plots);
    r.sections.back().tables.push_back(
        {"Bow over the sheet width [" + u.length.name + "], bend angle [deg]", bow_table(f, u)});
    if (TextTable t = slip_bounds_rows(f, u); !t.empty())
      r.sections.back().tables.push_back({slip_bounds_title(f, u), std::move(t)});
    if (TextTable t = friction_rows(f, u); !t.empty())
      r.sections.back().tables.push_back({friction_title(u), std::move(t)});
    if (auto words = sheet_hold_words(f, u); !words.empty())
      r.sections.back().lists.push_back({sheet_hold_title(f) + ":", std::move(words)});
    if (auto words = friction_troubles(f); !words.empty())
      r.sections.back().lists.push_back({"Bounds of the sheet's friction without a solution:", std::move(words)});
    if (auto words = hold_words(f, u); !words.empty())
      r.sections.back().lists.push_back({"Where the clamp has no clamping reserve:", std::move(words)});
  }
  ReportSection bears{"Loads and utilisation"};
  if (TextTable t = arm_seats_rows(f, u); !t.empty()) bears.tables.push_back({arm_seats_title(u), std::move(t)});
  if (TextTable t = load_table(f, u); !t.empty())
    bears.tables.push_back({"Greatest load and highest utilisation of each part", std::move(t)});
  if (TextTable t = dial_table(f, u); !t.empty())
    bears.tables.push_back({"Dials, displacement [" + u.length.name + "]", t});
  if (f.sheet) {
    bears.tables.push_back({"Bending loads from the sheet", sheet_table(*f.sheet)});
    bears.lists.push_back({"Moment law of the sheet:", {f.sheet->law + ": " + f.sheet->why}});
  }
  if (auto words = thrust_words(f, u); !words.empty())
    bears.lists.push_back({std::string(thrust_title) + ":", std::move(words)});
  if (auto words = local_peak_words(f, u); !words.empty())
    bears.lists.push_back({local_peak_title() + ":", std::move(words)});
  if (auto words = load_remarks(f); !words.empty())
    bears.lists.push_back({"Expected wear and damage:", std::move(words)});
  if (auto words = allowable_sources(f); !words.empty())
    bears.lists.push_back({"Allowable values and their sources:", std::move(words)});
  r.sections.push_back(std::move(bears));
  r.sections.push_back({"The case as read", {mass_words(f) + "."}});
  r.sections.back().listing = explain(c, {}, Style(false));
  return r;
}

} // namespace bedbow
