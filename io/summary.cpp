#include "io/summary.h"

#include "io/bracket_table.h"
#include "io/result_tables.h"
#include "io/text.h"

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr int width = 98;

<<<<<<< HEAD
=======
std::string percent(double utilisation) {
  return utilisation > 0 ? fixed(utilisation * 100, 0) + " %" : "-";
}

std::string bow_table(const Findings& f, const OutputUnits& u, const Style& style) {
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
  return "Bow over the sheet's width in " + u.length.name + ", bend angle in deg\n" + t.render(style);
}

/// Without a sheet: each body over its whole length.
std::string whole_bow_table(const Findings& f, const OutputUnits& u, const Style& style) {
  TextTable t({{"body", Align::left}, {"bow"}, {"straightness"}});
  if (!f.steps.empty())
    for (BodyKind kind : {BodyKind::bed, BodyKind::clamp, BodyKind::apron}) {
      const auto k = static_cast<std::size_t>(kind);
      const BowResult& bow = f.steps.front().bow;
      if (std::isfinite(bow.bow[k]))
        t.row({to_string(kind), in_unit(bow.bow[k], u.length, 1e-6), in_unit(bow.straightness[k], u.length, 1e-6)});
    }
  return t.empty()
             ? ""
             : "Bow of each body's edge over its whole length in " + u.length.name + "\n" + t.render(style) + "\n";
}

/// One line per thing, each at the step where it bears most.
struct Worst {
  std::string what, load, place, step;
  double utilisation = 0, value = -1;
};

void note(std::vector<Worst>& list, Worst w) {
  for (Worst& old : list)
    if (old.what == w.what) {
      if (w.value > old.value) old = std::move(w);
      return;
    }
  list.push_back(std::move(w));
}

std::vector<Worst> worst_of(const Findings& f, const OutputUnits& u) {
  std::vector<Worst> list;
  for (const StepResult& s : f.steps) {
    for (const BarResult& b : s.bars)
      note(list, {"bar " + b.name, in_unit(b.stress, u.stress, 1e5) + " " + u.stress.name,
                  "x = " + in_unit(b.at_x, u.length, 1e-3), s.name, b.utilisation, b.stress});
    const auto joints = [&](const char* kind, const std::vector<JointResult>& all) {
      for (const JointResult& j : all)
        note(list, {(j.name.starts_with(kind) ? "" : std::string(kind) + " ") + j.name,
                    in_unit(j.value, u.force, 1) + " " + u.force.name, "x = " + in_unit(j.at.x(), u.length, 1e-3),
                    s.name, j.utilisation, j.value});
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

std::string load_table(const Findings& f, const OutputUnits& u, const Style& style) {
  TextTable t({{"what bears", Align::left}, {"at most"}, {"used"}, {"where", Align::left}, {"in step", Align::left}});
  for (const Worst& w : worst_of(f, u))
    t.row({w.what, w.load, {percent(w.utilisation), w.utilisation > 1 ? Mark::bad : Mark::none}, w.place, w.step});
  return t.empty() ? "" : "Stress and force, each where it is greatest (used: of yield or proof)\n" + t.render(style);
}

std::string dial_table(const Findings& f, const OutputUnits& u, const Style& style) {
  TextTable t({{"dial", Align::left}, {"step", Align::left}, {"x"}, {"y"}, {"z"}});
  for (std::size_t i = 0; i < (f.steps.empty() ? 0 : f.steps.front().dials.size()); ++i)
    for (const StepResult& s : f.steps) {
      const DialResult& d = s.dials[i];
      const auto shown = [&](int k) { return in_unit(d.movement[k], u.length, 1e-6); };
      t.row({printable(d.name), s.name, shown(0), shown(1), shown(2)});
    }
  return t.empty() ? "" : "Dials, movement in " + u.length.name + "\n" + t.render(style) + "\n";
}

>>>>>>> 71881db (Give a body without a sheet its bow over its whole length: 0 there said what was not so)
std::string sheet_line(const SheetResult& s) {
  return "Sheet: moment " + fixed(s.moment, 1) + " N mm/mm, apron push " + fixed(s.apron * 1e-3, 2) + " N/mm, grip " +
         fixed(s.grip * 1e-3, 2) + " N/mm, springback " + fixed(s.springback / degree, 2) + " deg\n";
}

std::string lift_lines(const Findings& f, const OutputUnits& u) {
  std::string out;
  for (const StepResult& s : f.steps) {
    const BendLine& b = s.bend_line;
    std::size_t off = 0;
    for (bool l : b.lifted) off += l ? 1U : 0U;
    if (off > 0)
      out += "  " + s.name + ": the nose is off the sheet at " + std::to_string(off) + " of " +
             std::to_string(b.x.size()) + " stations between x = " + in_unit(b.x.front(), u.length, 1e-3) + " and " +
             in_unit(b.x.back(), u.length, 1e-3) + " " + u.length.name + "\n";
  }
  return out.empty() ? out : "Clamping\n" + out;
}

std::string items(const std::string& head, const std::vector<std::string>& list) {
  if (list.empty()) return "";
  std::string out = head + "\n";
  for (const std::string& i : list) out += list_item(printable(i), width, "  - ");
  return out;
}

} // namespace

std::string cautions() {
  return "Posts and cams hold stored force, nose and apron pinch, overloaded studs break without warning.\n"
         "A computed result is no proof of a safe machine: local codes and licensed practice come first.\n";
}

std::string summary(const Findings& f, const OutputUnits& units, const Style& style,
                    const std::vector<std::string>& assumptions) {
  std::string out = style.bold(printable(f.title)) + "\n\n";
  if (f.sheet) out += sheet_line(*f.sheet) + "\n";
<<<<<<< HEAD
  if (f.sheet)
    out += "Bow over the sheet's width in " + units.length.name + ", bend angle in deg\n" +
           bow_table(f, units).render(style) + "\n";
=======
  out += f.sheet ? bow_table(f, units, style) + "\n" : whole_bow_table(f, units, style);
>>>>>>> 71881db (Give a body without a sheet its bow over its whole length: 0 there said what was not so)
  if (f.bracket) out += bracket_table(f, units, style) + "\n";
  out += lift_lines(f, units);
  if (const TextTable dials = dial_table(f, units); !dials.empty())
    out += "Dials, movement in " + units.length.name + "\n" + dials.render(style) + "\n";
  if (const TextTable loads = load_table(f, units); !loads.empty())
    out += "Stress and force, each where it is greatest (used: of yield or proof)\n" + loads.render(style);
  out += "\n";
  out += "Verdict: " + (f.verdict.pass ? style.good("within the limits") : style.bad("a limit is exceeded")) + "\n";
  for (const std::string& r : f.verdict.reasons) out += list_item(r, width, "  - ");
  out += "Mass of bars, members and panels: " + fixed(f.mass, 1) + " kg\n";
  std::vector<std::string> assumed = f.assumptions;
  assumed.insert(assumed.end(), assumptions.begin(), assumptions.end());
  out += items("Assumed", assumed);
  out += items("Mind", f.warnings);
  return out + "\n" + cautions();
}

} // namespace bedbow
