#include "io/results/slip_bounds_table.h"

#include "io/text/step_label.h"
#include "io/text/table.h"
#include "io/text/text.h"
#include "mesh/piece/si.h"

#include <array>
#include <cmath>

namespace bedbow {

namespace {

struct Limit {
  const char* name;
  SlipBoundsSide SlipBounds::*side;
};

constexpr std::array limits{Limit{"no slip, welded", &SlipBounds::no_slip},
                            Limit{"no slip, free to roll", &SlipBounds::no_slip_rolling},
                            Limit{"free to slide", &SlipBounds::no_shear}};

const SlipBoundsStep* step_of(const SlipBoundsSide& side, std::size_t i) {
  return i < side.steps.size() ? &side.steps[i] : nullptr;
}

TextTable bows(const Findings& f, const OutputUnits& u) {
  TextTable t(
      {{"step", Align::left}, {"screws", Align::left}, {"clamp bow"}, {"bed bow"}, {"apron bow"}, {"angle spread"}});
  for (std::size_t i = 0; i < f.steps.size(); ++i)
    for (const Limit& limit : limits) {
      const SlipBoundsStep* s = step_of((*f.slip_bounds).*limit.side, i);
      const auto bow = [&](BodyKind body) {
        return s ? in_unit(s->bow.bow[static_cast<std::size_t>(body)], u.length, 1e-6) : std::string("-");
      };
      t.row({step_label(f.steps[i].name), limit.name, bow(BodyKind::clamp), bow(BodyKind::bed), bow(BodyKind::apron),
             s ? fixed(si::in_degrees(s->bow.angle_spread), 3) : "-"});
    }
  return t;
}

TextTable dials(const Findings& f, const OutputUnits& u) {
  std::vector<TextTable::Column> columns{{"dial", Align::left}, {"step", Align::left}, {"as computed"}};
  for (const Limit& limit : limits) columns.push_back({limit.name});
  TextTable t(columns);
  for (std::size_t i = 0; i < f.steps.size(); ++i)
    for (std::size_t k = 0; k < f.steps[i].dials.size(); ++k) {
      const DialResult& d = f.steps[i].dials[k];
      std::vector<TextTable::Cell> row{printable(d.name), step_label(f.steps[i].name),
                                       in_unit(d.movement.norm(), u.length, 1e-6)};
      for (const Limit& limit : limits) {
        const SlipBoundsStep* s = step_of((*f.slip_bounds).*limit.side, i);
        row.emplace_back(s ? in_unit(s->dials[k].movement.norm(), u.length, 1e-6) : "-");
      }
      t.row(std::move(row));
    }
  return t;
}

} // namespace

std::string slip_bounds_title(const Findings& f, const OutputUnits& u) {
  const std::string what =
      f.sheet ? "bow [" + u.length.name + "], spread [deg]" : "displacement [" + u.length.name + "]";
  return "Slip bounds of the screws: " + what;
}

TextTable slip_bounds_rows(const Findings& f, const OutputUnits& u) {
  if (!f.slip_bounds) return TextTable({});
  return f.sheet ? bows(f, u) : dials(f, u);
}

std::string slip_bounds_table(const Findings& f, const OutputUnits& u, const Style& style) {
  const TextTable table = slip_bounds_rows(f, u);
  if (table.empty()) return "";
  std::string out = slip_bounds_title(f, u) + "\n" + table.render(style);
  for (const Limit& limit : limits)
    if (const SlipBoundsSide& side = (*f.slip_bounds).*limit.side; side.status != Status::ok)
      out += list_item(std::string(limit.name) + " could not be solved: " + printable(side.trouble), 98, "  - ");
  return out;
}

} // namespace bedbow
