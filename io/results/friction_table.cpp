#include "io/results/friction_table.h"

#include "io/results/result_tables.h"
#include "io/text/step_label.h"
#include "io/text/text.h"
#include "mesh/piece/si.h"
#include "solver/findings/part_peaks.h"

#include <array>

namespace bedbow {

namespace {

/// One line of the table.
struct Line {
  const char* friction;
  BowResult bow;
  double use = 0;
};

void add_line(const std::string& step, const Line& l, const OutputUnits& u, TextTable& t) {
  const auto bow = [&](BodyKind body) { return in_unit(l.bow.bow[static_cast<std::size_t>(body)], u.length, 1e-6); };
  t.row({step, l.friction, bow(BodyKind::clamp), bow(BodyKind::bed), bow(BodyKind::apron),
         fixed(si::in_degrees(l.bow.angle_mean), 3), fixed(si::in_degrees(l.bow.angle_spread), 3), percent(l.use)});
}

} // namespace

std::string sheet_hold_title(const Findings& f) {
  return "Hold of the sheet by friction, coefficient " + fixed(f.sheet ? f.sheet->friction : 0, 2);
}

std::vector<std::string> sheet_hold_words(const Findings& f, const OutputUnits& u) {
  std::vector<std::string> out;
  for (const StepResult& s : f.steps) {
    if (!s.hold) continue;
    const SheetHold& h = *s.hold;
    const auto force = [&](double value) { return figure_text(value, Quantity::force, u); };
    std::string text = step_label(s.name) + ": the push draws the sheet back with " + force(h.needs) +
                       ", friction at nose and bed holds up to " + force(h.has);
    text += h.slips() ? ": it slips until the bend meets the nose's edge" : ": it does not slip";
    text += h.carried < 0 ? "; the sheet passes " + force(-h.carried) + " from the bed to the clamp"
                          : "; the sheet passes " + force(h.carried) + " from the clamp to the bed, past the posts";
    out.push_back(std::move(text));
  }
  return out;
}

std::string friction_title(const OutputUnits& u) {
  return "Friction of the sheet: bow [" + u.length.name + "], bend angle [deg], highest utilisation";
}

TextTable friction_rows(const Findings& f, const OutputUnits& u) {
  if (!f.friction_bounds) return TextTable({});
  TextTable t({{"step", Align::left},
               {"sheet", Align::left},
               {"clamp bow"},
               {"bed bow"},
               {"apron bow"},
               {"angle mean"},
               {"spread"},
               {"use"}});
  for (std::size_t i = 0; i < f.steps.size(); ++i) {
    const StepResult& s = f.steps[i];
    if (!s.hold) continue;
    const std::string step = step_label(s.name);
    const auto bound = [&](const char* name, const SlipBoundsSide& side) {
      if (i < side.steps.size()) add_line(step, {name, side.steps[i].bow, side.steps[i].use}, u, t);
    };
    bound("slides freely", f.friction_bounds->sliding);
    add_line(step, {"as solved", s.bow, highest_use(s)}, u, t);
    bound("never slides", f.friction_bounds->sticking);
  }
  return t;
}

std::vector<std::string> friction_troubles(const Findings& f) {
  std::vector<std::string> out;
  if (!f.friction_bounds) return out;
  for (const auto& [name, side] : {std::pair{"slides freely", &f.friction_bounds->sliding},
                                   std::pair{"never slides", &f.friction_bounds->sticking}})
    if (side->status != Status::ok) out.push_back(std::string(name) + " could not be solved: " + side->trouble);
  return out;
}

} // namespace bedbow
