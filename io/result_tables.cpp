#include "io/result_tables.h"

#include "io/text.h"

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

constexpr double degree = std::numbers::pi / 180;

void note(std::vector<WorstOf>& list, WorstOf w) {
  for (WorstOf& old : list)
    if (old.what == w.what) {
      if (w.value > old.value) old = std::move(w);
      return;
    }
  list.push_back(std::move(w));
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
  const auto place = [&](double x) { return "x = " + in_unit(x, u.length, 1e-3); };
  for (const StepResult& s : f.steps) {
    for (const BarResult& b : s.bars)
      note(list, {"bar " + b.name, in_unit(b.stress, u.stress, 1e5) + " " + u.stress.name, place(b.at_x), s.name,
                  b.utilisation, b.stress});
    const auto joints = [&](const char* kind, const std::vector<JointResult>& all) {
      for (const JointResult& j : all)
        note(list, {with_kind(kind, j.name), in_unit(j.value, u.force, 1) + " " + u.force.name, place(j.at.x()), s.name,
                    j.utilisation, j.value});
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
  TextTable t({{"what bears", Align::left}, {"at most"}, {"used"}, {"where", Align::left}, {"in step", Align::left}});
  for (const WorstOf& w : worst_loads(f, u))
    t.row({w.what, w.load, {percent(w.utilisation), w.utilisation > 1 ? Mark::bad : Mark::none}, w.place, w.step});
  return t;
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
