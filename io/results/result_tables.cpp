#include "io/results/result_tables.h"

#include "io/text/step_label.h"
#include "io/text/text.h"
#include "mesh/piece/si.h"
#include "solver/findings/nose_hold.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bedbow {

namespace {

using si::degree;

/// The greatest load of a part: stress of a bar, moment of a handle, else force; of a hinge across its pin.
std::string load_words(const PartPeaks& p, const OutputUnits& u) {
  if (!p.kind) return in_unit(p.load.value, u.stress, 1e5) + " " + u.stress.name;
  const Peak& force = p.across.step.empty() ? p.load : p.across;
  return force_text(force.value, u);
}

void add_once(std::vector<std::string>& list, std::string line) {
  if (std::ranges::find(list, line) == list.end()) list.push_back(std::move(line));
}

/// "19.4 N/mm", or from least to greatest where they differ.
std::string pressure_words(double least, double greatest, const OutputUnits& u) {
  const OutputUnit unit = force_per_length(u);
  const std::string from = in_unit(least, unit, 100), to = in_unit(greatest, unit, 100);
  return (from == to ? "" : from + " to ") + to + " " + unit.name;
}

} // namespace

std::string percent(double utilisation) {
  return utilisation > 0 ? fixed(utilisation * 100, 0) + " %" : "-";
}

std::string mass_words(const Findings& f) {
  return "Mass of bars, members and panels: " +
         (std::isfinite(f.mass) ? fixed(f.mass, 1) + " kg" : "unknown, since a material has no density");
}

std::string governing_words(const PartPeaks& p, const OutputUnits& u) {
  const Check& c = p.check;
  if (c.what.empty() || !p.kind || c.unit == Quantity::ratio) return c.what;
  const OutputUnit& unit = c.unit == Quantity::force ? u.force : u.stress;
  const double step = c.unit == Quantity::force ? 10 : 1e5;
  return c.what + " " + in_unit(c.actual, unit, step) + " of " + in_unit(c.allowed.value, unit, step) + " " + unit.name;
}

std::vector<std::string> hold_words(const Findings& f, const OutputUnits& u) {
  std::vector<std::string> out;
  for (const StepResult& s : f.steps) {
    const NoseHold h = nose_hold(s.bend_line);
    if (h.without_reserve == 0) continue;
    const std::string opening = length_text(h.opening, u, 1e-6);
    const auto stations = [&](std::size_t n) { return std::to_string(n) + " of " + std::to_string(h.held); };
    std::string text = step_label(s.name) + ": at " + stations(h.without_reserve) + " stations ";
    if (h.greatest > 0)
      text += "only the sheet's own lever presses on the nose, by " + pressure_words(h.least, h.greatest, u) +
              ", without clamping reserve";
    else
      text += "the nose does not press on the sheet";
    text += "; it is open by up to " + opening;
    if (h.lifted > 0) text += ", at " + stations(h.lifted) + " by more than the limit";
    out.push_back(std::move(text));
  }
  return out;
}

TextTable bow_table(const Findings& f, const OutputUnits& u) {
  TextTable t({{"step", Align::left},
               {"clamp bow"},
               {"bed bow"},
               {"apron bow"},
               {"angle mean"},
               {"angle spread"},
               {"", Align::left}});
  for (std::size_t i = 0; i < f.steps.size(); ++i) {
    const StepResult& s = f.steps[i];
    const auto bow = [&](BodyKind k) { return in_unit(s.bow.bow[static_cast<std::size_t>(k)], u.length, 1e-6); };
    t.row({step_label(s.name), bow(BodyKind::clamp), bow(BodyKind::bed), bow(BodyKind::apron),
           fixed(s.bow.angle_mean / degree, 3), fixed(s.bow.angle_spread / degree, 3),
           f.worst_step == i ? "worst" : ""});
  }
  return t;
}

TextTable whole_bow_table(const Findings& f, const OutputUnits& u) {
  TextTable t({{"body", Align::left}, {"bow"}, {"straightness"}});
  if (f.steps.empty()) return t;
  for (BodyKind kind : {BodyKind::bed, BodyKind::clamp, BodyKind::apron}) {
    const auto k = static_cast<std::size_t>(kind);
    const BowResult& bow = f.steps.front().bow;
    if (std::isfinite(bow.bow[k]))
      t.row({to_string(kind), in_unit(bow.bow[k], u.length, 1e-6), in_unit(bow.straightness[k], u.length, 1e-6)});
  }
  return t;
}

TextTable load_table(const Findings& f, const OutputUnits& u) {
  TextTable t({{"part", Align::left},
               {"greatest load"},
               {"in step", Align::left},
               {"utilisation"},
               {"governing check", Align::left},
               {"at x"},
               {"in step", Align::left}});
  for (const PartPeaks& p : part_peaks(f.steps)) {
    if (p.kind && info(*p.kind).quantity == Quantity::moment) continue; // nothing is checked with it
    const bool used = p.use.value > 0;
    const std::string check = used ? governing_words(p, u) : "";
    const Peak& load = p.across.step.empty() ? p.load : p.across;
    const double x = used ? p.use.x : load.x;
    t.row({p.label(),
           load_words(p, u),
           step_label(load.step),
           {percent(p.use.value), p.use.value > 1 ? Mark::bad : Mark::none},
           check.empty() ? "-" : check,
           std::isnan(x) ? "-" : length_text(x, u, 1e-3),
           used ? step_label(p.use.step) : "-"});
  }
  return t;
}

std::vector<std::string> thrust_words(const Findings& f, const OutputUnits& u) {
  std::vector<std::string> out;
  for (const PartPeaks& p : part_peaks(f.steps))
    if (!p.thrust.step.empty())
      out.push_back(p.label() + ": " + force_text(p.thrust.value, u) + " (" + step_label(p.thrust.step) + ")");
  return out;
}

std::string local_peak_title() {
  return "Local peaks of stress beside point forces, not part of the verdict";
}

std::vector<std::string> local_peak_words(const Findings& f, const OutputUnits& u) {
  constexpr double worth_mention = 1.05; // over the judged stress; common practice, no source
  const auto stress = [&](double value) { return in_unit(value, u.stress, 1e5) + " " + u.stress.name; };
  std::vector<std::string> out;
  for (const PartPeaks& p : part_peaks(f.steps))
    if (!p.kind && p.local.value > worth_mention * p.load.value)
      out.push_back(p.label() + ": " + stress(p.local.value) + " at x = " + length_text(p.local.x, u, 1e-3) + ", " +
                    step_label(p.local.step) + " (judged: " + stress(p.load.value) + ")");
  return out;
}

std::vector<std::string> load_remarks(const Findings& f) {
  std::vector<std::string> out;
  std::vector<std::string> told; // the first step is sufficient
  for (const StepResult& s : f.steps)
    for (const JointResult& j : s.joints) {
      const std::string name = with_kind(info(j.kind).key, j.name);
      if (j.remarks.empty() || std::ranges::find(told, name) != told.end()) continue;
      told.push_back(name);
      out.push_back(name + " in step " + step_label(s.name) + ": " + j.remarks.front());
    }
  return out;
}

std::vector<std::string> allowable_sources(const Findings& f) {
  std::vector<std::string> out;
  for (const StepResult& s : f.steps)
    for (const JointResult& j : s.joints)
      for (const Check& c : j.checks)
        add_once(out, c.what + ": " + (c.allowed.value > 0 ? c.allowed.source : "unknown"));
  return out;
}

TextTable dial_table(const Findings& f, const OutputUnits& u) {
  TextTable t({{"dial", Align::left}, {"step", Align::left}, {"x"}, {"y"}, {"z"}});
  for (std::size_t i = 0; i < (f.steps.empty() ? 0 : f.steps.front().dials.size()); ++i)
    for (const StepResult& s : f.steps) {
      const DialResult& d = s.dials[i];
      const auto shown = [&](int k) { return in_unit(d.movement[k], u.length, 1e-6); };
      t.row({printable(d.name), step_label(s.name), shown(0), shown(1), shown(2)});
    }
  return t;
}

} // namespace bedbow
