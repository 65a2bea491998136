#include "io/result_tables.h"

#include "io/text.h"
#include "solver/nose_hold.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace bedbow {

namespace {

constexpr double degree = std::numbers::pi / 180;

void note(std::vector<WorstOf>& list, WorstOf w) {
  for (WorstOf& old : list)
    if (old.what == w.what) {
      // What bears most counts; without any allowable known, what is greatest.
      if (clearly_greater(w.utilisation, old.utilisation) ||
          (!clearly_greater(old.utilisation, w.utilisation) && clearly_greater(w.value, old.value)))
        old = std::move(w);
      return;
    }
  list.push_back(std::move(w));
}

std::string governing(const std::vector<Check>& checks, const OutputUnits& u) {
  const Check* c = worst_check(checks);
  if (!c) return "";
  if (c->unit == CheckUnit::ratio) return c->what;
  const OutputUnit& unit = c->unit == CheckUnit::force ? u.force : u.stress;
  const double step = c->unit == CheckUnit::force ? 10 : 1e5;
  return c->what + " " + in_unit(c->actual, unit, step) + " of " + in_unit(c->allowed.value, unit, step) + " " +
         unit.name;
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

/// Calls f(kind, joint) for every joint that is checked.
template <class F> void each_checked(const StepResult& s, F f) {
  for (const auto& [kind, list] : {std::pair{"post", &s.posts}, std::pair{"cam", &s.cams},
                                   std::pair{"hinge", &s.hinges}, std::pair{"screws", &s.screws}})
    for (const JointResult& j : *list) f(kind, j);
}

} // namespace

std::string percent(double utilisation) {
  return utilisation > 0 ? fixed(utilisation * 100, 0) + " %" : "-";
}

std::string with_kind(const std::string& kind, const std::string& name) {
  return name.starts_with(kind) ? name : kind + " " + name;
}

std::vector<WorstOf> worst_loads(const Findings& f, const OutputUnits& u) {
  std::vector<WorstOf> list;
  const auto place = [&](double x) { return "x = " + in_unit(x, u.length, 1e-3) + " " + u.length.name; };
  for (const StepResult& s : f.steps) {
    for (const BarResult& b : s.bars)
      note(list, {"bar " + b.name, in_unit(b.stress, u.stress, 1e5) + " " + u.stress.name, place(b.at_x), s.name,
                  b.utilisation, b.stress, b.utilisation > 0 ? "yield" : ""});
    const auto joints = [&](const char* kind, const std::vector<JointResult>& all) {
      for (const JointResult& j : all) {
        const auto across = j.more.find("across_N"); // a hinge: what its checks are made with
        const double force = across == j.more.end() ? j.value : across->second;
        note(list, {with_kind(kind, j.name), in_unit(force, u.force, 1) + " " + u.force.name, place(j.at.x()), s.name,
                    j.utilisation, force, governing(j.checks, u)});
      }
    };
    joints("post", s.posts);
    joints("cam", s.cams);
    joints("hinge", s.hinges);
    joints("screws", s.screws);
    joints("support", s.supports);
    joints("tie", s.ties);
  }
  return list;
}

std::vector<std::string> hold_words(const Findings& f, const OutputUnits& u) {
  std::vector<std::string> out;
  for (const StepResult& s : f.steps) {
    const NoseHold h = nose_hold(s.bend_line);
    if (h.without_reserve == 0) continue;
    const std::string opening = in_unit(h.opening, u.length, 1e-6) + " " + u.length.name;
    const auto stations = [&](std::size_t n) { return std::to_string(n) + " of " + std::to_string(h.held); };
    std::string text = s.name + ": at " + stations(h.without_reserve) + " stations ";
    if (h.greatest > 0)
      text += "only the sheet's own lever presses on the nose, by " + pressure_words(h.least, h.greatest, u) +
              ", without reserve of clamping";
    else
      text += "the nose does not press on the sheet";
    text += "; it stands open by up to " + opening;
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
    t.row({s.name, bow(BodyKind::clamp), bow(BodyKind::bed), bow(BodyKind::apron), fixed(s.bow.angle_mean / degree, 3),
           fixed(s.bow.angle_spread / degree, 3), f.worst_step == i ? "worst" : ""});
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
  TextTable t({{"what bears", Align::left},
               {"at most"},
               {"used"},
               {"by", Align::left},
               {"where", Align::left},
               {"in step", Align::left}});
  for (const WorstOf& w : worst_loads(f, u))
    t.row(
        {w.what, w.load, {percent(w.utilisation), w.utilisation > 1 ? Mark::bad : Mark::none}, w.by, w.place, w.step});
  return t;
}

std::vector<std::string> load_remarks(const Findings& f) {
  std::vector<std::string> out;
  std::vector<std::string> told; // the first step says enough
  for (const StepResult& s : f.steps)
    each_checked(s, [&](const char* kind, const JointResult& j) {
      const std::string name = with_kind(kind, j.name);
      if (j.remarks.empty() || std::ranges::find(told, name) != told.end()) return;
      told.push_back(name);
      out.push_back(name + " in step " + s.name + ": " + j.remarks.front());
    });
  return out;
}

std::vector<std::string> allowable_sources(const Findings& f) {
  std::vector<std::string> out;
  for (const StepResult& s : f.steps)
    each_checked(s, [&](const char*, const JointResult& j) {
      for (const Check& c : j.checks)
        add_once(out, c.what + ": " + (c.allowed.value > 0 ? c.allowed.source : "unknown"));
    });
  return out;
}

TextTable dial_table(const Findings& f, const OutputUnits& u) {
  TextTable t({{"dial", Align::left}, {"step", Align::left}, {"x"}, {"y"}, {"z"}});
  for (std::size_t i = 0; i < (f.steps.empty() ? 0 : f.steps.front().dials.size()); ++i)
    for (const StepResult& s : f.steps) {
      const DialResult& d = s.dials[i];
      const auto shown = [&](int k) { return in_unit(d.movement[k], u.length, 1e-6); };
      t.row({printable(d.name), s.name, shown(0), shown(1), shown(2)});
    }
  return t;
}

} // namespace bedbow
