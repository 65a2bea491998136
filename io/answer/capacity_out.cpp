#include "io/answer/capacity_out.h"

#include "io/results/csv.h"
#include "io/text/json_text.h"
#include "io/text/text.h"
#include "io/units/quantities_out.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// The rows of a material, grouped by width.
std::vector<std::vector<const Capacity*>> by_width(const CapacityTable& table, int material) {
  std::vector<std::vector<const Capacity*>> out;
  for (const Capacity& c : table.rows) {
    if (c.material != material) continue;
    if (out.empty() || out.back().front()->place.width != c.place.width) out.emplace_back();
    out.back().push_back(&c);
  }
  return out;
}

/// "112.5 mm wide", without needless zeros.
std::string width_words(const SheetPlace& place) {
  return csv_number(to_mm(place.width)) + " mm wide";
}

/// Half the least distance between two places at which a sheet of any width was tried; a twentieth of the bench where
/// no width has two.
double half_cell(const std::vector<std::vector<const Capacity*>>& lines, double bench) {
  double least = bench / 10;
  for (const auto& line : lines)
    for (std::size_t i = 1; i < line.size(); ++i)
      least = std::min(least, line[i]->place.centre - line[i - 1]->place.centre);
  return least / 2;
}

/// Cells meet midway between neighbouring places; the outermost reach as far outwards as is usual inwards.
HeatRow row_of(const std::vector<const Capacity*>& line, double half) {
  HeatRow row{csv_number(to_mm(line.front()->place.width)), {}};
  for (std::size_t i = 0; i < line.size(); ++i) {
    const double x = line[i]->place.centre;
    const double low = i > 0 ? (line[i - 1]->place.centre + x) / 2 : x - half;
    const double high = i + 1 < line.size() ? (line[i + 1]->place.centre + x) / 2 : x + half;
    const double t = to_mm(line[i]->thickness);
    row.cells.push_back({to_mm(low), to_mm(high), t, std::isfinite(t) ? fixed(t, 2) : "none"});
  }
  return row;
}

} // namespace

TextTable capacity_table(const CapacityTable& table, const Machine& m, const OutputUnits& units) {
  const OutputUnit& unit = units.length;
  TextTable text({{"material", Align::left},
                  {"width " + unit.name},
                  {"centre " + unit.name},
                  {"thickness " + unit.name},
                  {"limited by", Align::left}});
  for (const Capacity& row : table.rows)
    text.row({printable(m.materials.at(row.material).name), in_unit(row.place.width, unit, 1e-4),
              in_unit(row.place.centre, unit, 1e-4),
              std::isfinite(row.thickness) ? TextTable::Cell(in_unit(row.thickness, unit, 1e-5))
                                           : TextTable::Cell("none", Mark::bad),
              printable(row.limited_by)});
  return text;
}

std::string capacity_json(const CapacityTable& table, const Machine& m) {
  nlohmann::ordered_json out;
  out["rows"] = nlohmann::ordered_json::array();
  for (const Capacity& c : table.rows)
    out["rows"].push_back({{"material", m.materials.at(c.material).name},
                           {"width_mm", twelve_digits(to_mm(c.place.width))},
                           {"centre_mm", twelve_digits(to_mm(c.place.centre))},
                           {"thickness_mm", twelve_digits(to_mm(c.thickness))},
                           {"limited_by", c.limited_by}});
  return json_text(out);
}

std::string capacity_csv(const CapacityTable& table, const Machine& m) {
  std::string out = csv_row({"material", "width_mm", "centre_mm", "thickness_mm", "limited_by"});
  for (const Capacity& c : table.rows)
    out += csv_row({m.materials.at(c.material).name, csv_number(to_mm(c.place.width)),
                    csv_number(to_mm(c.place.centre)), csv_number(to_mm(c.thickness)), c.limited_by});
  return out;
}

HeatMap capacity_map(const CapacityTable& table, const Machine& m, int material) {
  HeatMap map;
  map.title = "Thickest " + m.materials.at(material).name + " sheet within limits [mm]";
  map.row_head = "width [mm]";
  map.x_label = "middle of the sheet along the bed [mm]";
  map.note = "darker is thicker; grey: none";
  const auto [from, to] = bench_of(m);
  map.x_low = to_mm(from);
  map.x_high = to_mm(to);
  for (const Post& p : m.posts) map.marks.push_back({to_mm(p.at.x()), "post"});
  const auto lines = by_width(table, material);
  for (const auto& line : lines) map.rows.push_back(row_of(line, half_cell(lines, to - from)));
  return map;
}

Plot capacity_plot(const CapacityTable& table, const Machine& m, int material) {
  Plot plot{m.materials.at(material).name + ": thickest sheet over its place", "middle of the sheet along the bed [mm]",
            "thickness [mm]"};
  plot.file = "capacity";
  for (const auto& line : by_width(table, material)) {
    PlotSeries& s = plot.series.emplace_back();
    s.name = width_words(line.front()->place);
    for (const Capacity* c : line) {
      s.x.push_back(to_mm(c->place.centre));
      s.y.push_back(to_mm(c->thickness));
    }
    if (line.size() == 1) s.kind = PlotSeries::Kind::points;
  }
  return plot;
}

} // namespace bedbow
