#include "io/bracket_table.h"

#include "io/table.h"
#include "io/text.h"

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

std::string trouble_of(const BracketSide& side, const std::string& which) {
  if (side.status == Status::ok) return "";
  return list_item(which + " could not be solved: " + printable(side.trouble), 98, "  - ");
}

std::string range(const std::string& no_slip, const std::string& no_shear) {
  return no_slip == "-" && no_shear == "-" ? "-" : no_slip + " .. " + no_shear;
}

const BracketStep* step_of(const BracketSide& side, std::size_t i) {
  return i < side.steps.size() ? &side.steps[i] : nullptr;
}

TextTable bows(const Findings& f, const OutputUnits& u) {
  TextTable t({{"step", Align::left}, {"clamp bow"}, {"bed bow"}, {"apron bow"}, {"angle spread"}});
  for (std::size_t i = 0; i < f.steps.size(); ++i) {
    const BracketStep* a = step_of(f.bracket->no_slip, i);
    const BracketStep* b = step_of(f.bracket->no_shear, i);
    const auto bow = [&](BodyKind body) {
      const auto k = static_cast<std::size_t>(body);
      return range(a ? in_unit(a->bow.bow[k], u.length, 1e-6) : "-", b ? in_unit(b->bow.bow[k], u.length, 1e-6) : "-");
    };
    const auto spread = [](const BracketStep* s) {
      return s ? fixed(s->bow.angle_spread * 180 / std::numbers::pi, 3) : std::string("-");
    };
    t.row(
        {f.steps[i].name, bow(BodyKind::clamp), bow(BodyKind::bed), bow(BodyKind::apron), range(spread(a), spread(b))});
  }
  return t;
}

TextTable dials(const Findings& f, const OutputUnits& u) {
  TextTable t({{"dial", Align::left}, {"step", Align::left}, {"as computed"}, {"no slip"}, {"no shear"}});
  for (std::size_t i = 0; i < f.steps.size(); ++i)
    for (std::size_t k = 0; k < f.steps[i].dials.size(); ++k) {
      const DialResult& d = f.steps[i].dials[k];
      const auto moved = [&](const BracketSide& side) {
        const BracketStep* s = step_of(side, i);
        return s ? in_unit(s->dials[k].movement.norm(), u.length, 1e-6) : std::string("-");
      };
      t.row({printable(d.name), f.steps[i].name, in_unit(d.movement.norm(), u.length, 1e-6), moved(f.bracket->no_slip),
             moved(f.bracket->no_shear)});
    }
  return t;
}

} // namespace

std::string bracket_title(const Findings& f, const OutputUnits& u) {
  const std::string what = f.sheet ? "bow in " + u.length.name + ", spread in deg" : "movement in " + u.length.name;
  return "If the screws held without slip .. if they carried no shear (" + what + ")";
}

TextTable bracket_rows(const Findings& f, const OutputUnits& u) {
  if (!f.bracket) return TextTable({});
  return f.sheet ? bows(f, u) : dials(f, u);
}

std::string bracket_table(const Findings& f, const OutputUnits& u, const Style& style) {
  const TextTable table = bracket_rows(f, u);
  if (table.empty()) return "";
  return bracket_title(f, u) + "\n" + table.render(style) + trouble_of(f.bracket->no_slip, "without slip") +
         trouble_of(f.bracket->no_shear, "without shear");
}

} // namespace bedbow
