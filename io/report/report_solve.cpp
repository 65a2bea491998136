#include "io/report/report_solve.h"

#include "io/draw/bend_line_plots.h"
#include "io/explain/explain.h"
#include "io/report/report_machine.h"
#include "io/results/bracket_table.h"
#include "io/results/reason_words.h"
#include "io/results/result_tables.h"
#include "io/text/step_label.h"
#include "io/units/quantities_out.h"
#include "solver/findings/nose_hold.h"

#include <cmath>

namespace bedbow {

namespace {

using Outcome = ReportCheck::Outcome;

/// Greatest value of the steps, ignoring NaN, and its step.
struct Greatest {
  double value = 0;
  std::string step;
  bool found = false;
  void look(double v, const std::string& name) {
    if (!std::isfinite(v) || (found && v <= value)) return;
    *this = {v, step_label(name), true};
  }
};

Greatest bow_peak(const Findings& f, BodyKind body) {
  Greatest p;
  for (const StepResult& s : f.steps)
    if (body != BodyKind::apron || judges_bend(s)) p.look(s.bow.bow[static_cast<std::size_t>(body)], s.name);
  return p;
}

Greatest spread_peak(const Findings& f) {
  Greatest p;
  for (const StepResult& s : f.steps)
    if (judges_bend(s)) p.look(s.bow.angle_spread, s.name);
  return p;
}

Greatest opening_peak(const Findings& f) {
  Greatest p;
  for (const StepResult& s : f.steps)
    if (const NoseHold h = nose_hold(s.bend_line); h.held > 0) p.look(h.opening, s.name);
  return p;
}

Outcome outcome(double value, const std::optional<double>& limit) {
  if (!limit) return Outcome::no_limit;
  return value > *limit ? Outcome::fail : Outcome::pass;
}

PartPeaks most_used(const Findings& f) {
  PartPeaks most;
  for (PartPeaks& p : part_peaks(f.steps))
    if (clearly_greater(p.use.value, most.use.value)) most = std::move(p);
  return most;
}

std::string bow_words(const Findings& f, const OutputUnits& u) {
  std::string out;
  for (const BodyKind body : {BodyKind::clamp, BodyKind::bed, BodyKind::apron})
    if (const Greatest p = bow_peak(f, body); p.found)
      out += (out.empty() ? "" : ", ") + to_string(body) + " " + length_text(p.value, u, 1e-6);
  return out;
}

/// The main results, without comparison with limits.
std::string figures(const Case& c, const Findings& f) {
  const OutputUnits& u = c.output;
  std::string out;
  if (const Greatest spread = spread_peak(f); f.sheet && spread.found)
    out = "the bend angle varies by " + degrees_text(spread.value) + " along the sheet at worst (" + spread.step + ")";
  if (const std::string bow = bow_words(f, u); f.sheet && !bow.empty())
    out += (out.empty() ? "" : ", ") + std::string("the greatest bows are: ") + bow;
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
  t.row({"springback", fixed(to_deg(s.springback), 2), "deg"});
  return t;
}

} // namespace

std::string solve_answer(const Case& c, const Findings& f) {
  const bool judged = c.machine.limits.bow || c.machine.limits.angle || c.machine.limits.utilisation;
  if (!judged && f.verdict.pass) return "No limit is set: " + figures(c, f) + ".";
  if (f.verdict.pass) return "Within the limits: " + figures(c, f) + ".";
  std::string why = f.verdict.reasons.empty() ? figures(c, f) : reason_words(f.verdict.reasons.front(), c.output);
  if (f.verdict.reasons.size() > 1) why += ", and " + std::to_string(f.verdict.reasons.size() - 1) + " more below";
  return "A limit is exceeded: " + why + ".";
}

std::vector<ReportCheck> solve_checks(const Case& c, const Findings& f) {
  const Limits& limits = c.machine.limits;
  const OutputUnits& u = c.output;
  std::vector<ReportCheck> out;
  if (f.sheet) {
    for (const BodyKind body : {BodyKind::clamp, BodyKind::bed, BodyKind::apron})
      if (const Greatest p = bow_peak(f, body); p.found)
        out.push_back({"bow of the " + to_string(body), length_text(p.value, u, 1e-6),
                       limits.bow ? length_text(*limits.bow, u, 1e-6) : "-", p.step, outcome(p.value, limits.bow)});
    if (const Greatest p = spread_peak(f); p.found)
      out.push_back({"spread of the bend angle", degrees_text(p.value),
                     limits.angle ? degrees_text(*limits.angle) : "-", p.step, outcome(p.value, limits.angle)});
    if (const Greatest p = opening_peak(f); p.found && c.machine.sheet) {
      out.push_back({"nose opening", length_text(p.value, u, 1e-6),
                     limits.nose_opening ? length_text(*limits.nose_opening, u, 1e-6) : "-", p.step,
                     outcome(p.value, limits.nose_opening)});
    }
  }
  // Without a limit in the case a utilisation of 100 % is permitted.
  if (const PartPeaks p = most_used(f); p.use.value > 0)
    out.push_back({"highest utilisation: " + p.label(), percent(p.use.value), percent(limits.utilisation.value_or(1)),
                   step_label(p.use.step) + ", x = " + in_unit(p.use.x, u.length, 1e-3) + " " + u.length.name,
                   outcome(p.use.value, limits.utilisation.value_or(1))});
  return out;
}

void add_solve_checks(Report& r, const Case& c, const Findings& f) {
  r.checks = solve_checks(c, f);
  r.checks_note =
      "The limits are those of the case file; for the nose opening the default is 5 % of the sheet's thickness. "
      "Utilisation: actual over allowable value.";
}

Report solve_report(const Case& c, const Findings& f, const RunStamp& stamp) {
  const OutputUnits& u = c.output;
  Report r{f.title};
  r.answer = solve_answer(c, f);
  r.pass = f.verdict.pass;
  r.reasons = reason_words(f.verdict.reasons, u);
  add_solve_checks(r, c, f);
  r.units = u;
  r.stamp = stamp;
  r.warnings = f.warnings;
  r.assumptions = f.assumptions;
  r.assumptions.insert(r.assumptions.end(), c.assumptions.begin(), c.assumptions.end());
  add_machine(r, c.machine, f);
  if (auto plots = bend_line_plots(f, c.machine.limits, u); !plots.empty()) {
    r.sections.push_back({"Along the bend line"});
    r.sections.back().plots = std::move(plots);
    r.sections.back().tables.push_back(
        {"Bow over the sheet width [" + u.length.name + "], bend angle [deg]", bow_table(f, u)});
    if (TextTable t = bracket_rows(f, u); !t.empty())
      r.sections.back().tables.push_back({bracket_title(f, u), std::move(t)});
    if (auto words = hold_words(f, u); !words.empty())
      r.sections.back().lists.push_back({"Where the clamp has no clamping reserve:", std::move(words)});
  }
  ReportSection bears{"Loads and utilisation"};
  if (TextTable t = load_table(f, u); !t.empty())
    bears.tables.push_back({"Greatest load and highest utilisation of each part", std::move(t)});
  if (TextTable t = dial_table(f, u); !t.empty())
    bears.tables.push_back({"Dials, displacement [" + u.length.name + "]", t});
  if (f.sheet) bears.tables.push_back({"Bending loads from the sheet", sheet_table(*f.sheet)});
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
