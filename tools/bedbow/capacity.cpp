#include "solver/study/capacity.h"

#include "io/atomic_file.h"
#include "io/case_reader.h"
#include "io/csv.h"
#include "io/heat_map.h"
#include "io/json_text.h"
#include "io/nearest.h"
#include "io/output_units.h"
#include "io/quantities_out.h"
#include "io/quantity.h"
#include "io/table.h"
#include "io/text.h"
#include "mesh/material.h"
#include "solver/linear/process.h"
#include "tools/bedbow/commands.h"
#include "tools/bedbow/exit_code.h"
#include "tools/bedbow/output_place.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iostream>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

struct CapacityArguments {
  std::string file, csv, svg, thickest = "6 mm", thinnest = "0.3 mm";
  std::vector<std::string> widths, centres, materials;
  int threads = 0;
  bool json = false;
};

constexpr int default_centres = 9;

/// What a sheet can lie on: bed and clamp together.
std::pair<double, double> bench_of(const Machine& m) {
  double from = -INFINITY, to = INFINITY;
  for (const Body& body : m.bodies) {
    if (!body.present()) continue;
    from = std::max(from, body.start);
    to = std::min(to, body.start + body.length);
  }
  return {from, to};
}

double length_of(const std::string& option, const std::string& text) {
  return lengths_of(option, {text}).front();
}

/// All pairs of width and centre that fit on the bed.
std::vector<SheetPlace> places_of(const Machine& m, const CapacityArguments& a) {
  const auto [from, to] = bench_of(m);
  std::vector<double> widths = lengths_of("widths", a.widths), centres = lengths_of("centres", a.centres);
  if (widths.empty())
    for (const double share : {0.125, 0.25, 0.5, 0.75, 1.0}) widths.push_back((to - from) * share);
  if (centres.empty())
    for (int i = 0; i < default_centres; ++i) centres.push_back(from + (to - from) * (i + 0.5) / default_centres);
  std::vector<SheetPlace> out;
  const double slack = 1e-9;
  for (const double width : widths) {
    if (!(width > 0)) throw std::invalid_argument("--widths: a width must be greater than 0");
    const std::size_t before = out.size();
    for (const double centre : centres)
      if (centre - width / 2 >= from - slack && centre + width / 2 <= to + slack) out.push_back({width, centre});
    // A sheet too wide for every place asked for still lies in the middle.
    if (out.size() == before && a.centres.empty() && width <= to - from + slack)
      out.push_back({width, (from + to) / 2});
  }
  if (out.empty()) throw std::invalid_argument("no sheet of these widths lies at these centres on the bed");
  return out;
}

/// Index of a material in the machine's list, which built-in ones are added to.
int material_index(Machine& m, const std::string& name) {
  const auto it = std::ranges::find(m.materials, name, &Material::name);
  if (it != m.materials.end()) return static_cast<int>(it - m.materials.begin());
  const Material* found = find_material(name);
  if (!found) {
    std::vector<std::string> names;
    for (const Material& known : builtin_materials()) names.push_back(known.name);
    throw std::invalid_argument("--materials: there is no material \"" + name + "\"; nearest is \"" +
                                nearest(name, names) + "\" (`bedbow list` shows them all)");
  }
  m.materials.push_back(*found);
  return static_cast<int>(m.materials.size()) - 1;
}

std::string json_of(const CapacityTable& table, const Machine& m) {
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

std::string csv_of(const CapacityTable& table, const Machine& m) {
  std::string out = csv_row({"material", "width_mm", "centre_mm", "thickness_mm", "limited_by"});
  for (const Capacity& c : table.rows)
    out += csv_row({m.materials.at(c.material).name, csv_number(to_mm(c.place.width)),
                    csv_number(to_mm(c.place.centre)), csv_number(to_mm(c.thickness)), c.limited_by});
  return out;
}

void print(const CapacityTable& table, const Case& c, const Machine& m) {
  const Style style = style_for(1);
  const OutputUnit& unit = c.output.length;
  std::cout << style.bold(printable(m.title)) << "\n\nThickest sheet within the limits, in " << unit.name << "\n";
  TextTable text({{"material", Align::left}, {"width"}, {"centre"}, {"thickness"}, {"limited by", Align::left}});
  for (const Capacity& row : table.rows)
    text.row({printable(m.materials.at(row.material).name), in_unit(row.place.width, unit, 1e-4),
              in_unit(row.place.centre, unit, 1e-4),
              std::isfinite(row.thickness) ? TextTable::Cell(in_unit(row.thickness, unit, 1e-5))
                                           : TextTable::Cell("none", Mark::bad),
              printable(row.limited_by)});
  std::cout << text.render(style)
            << "Caution: a limit of the machine is not one of the operator; thick sheet springs when it slips.\n";
}

/// One picture a material: rows of one width each, cells from midway to midway between neighbouring centres.
std::string picture(const CapacityTable& table, const Machine& m, int material) {
  HeatMap map;
  map.title = "Thickest " + m.materials.at(material).name + " sheet within limits [mm]";
  map.x_label = "middle of the sheet along the bed [mm]";
  map.note = "dashed: posts; the darker, the thicker; grey: none";
  const auto [from, to] = bench_of(m);
  map.x_low = to_mm(from);
  map.x_high = to_mm(to);
  for (const Post& p : m.posts) map.marks.push_back({to_mm(p.at.x()), "post"});
  std::vector<const Capacity*> line;
  const auto flush = [&] {
    if (line.empty()) return;
    HeatRow row{fixed(to_mm(line.front()->place.width), 0) + " mm wide", {}};
    for (std::size_t i = 0; i < line.size(); ++i) {
      const double x = line[i]->place.centre;
      const double low = i > 0 ? (line[i - 1]->place.centre + x) / 2 : std::max(from, x - line[i]->place.width / 2);
      const double high =
          i + 1 < line.size() ? (line[i + 1]->place.centre + x) / 2 : std::min(to, x + line[i]->place.width / 2);
      const double t = to_mm(line[i]->thickness);
      row.cells.push_back({to_mm(low), to_mm(high), t, std::isfinite(t) ? fixed(t, 2) : "none"});
    }
    map.rows.push_back(std::move(row));
    line.clear();
  };
  for (const Capacity& c : table.rows) {
    if (c.material != material) continue;
    if (!line.empty() && line.front()->place.width != c.place.width) flush();
    line.push_back(&c);
  }
  flush();
  return heat_map_svg(map);
}

void write_pictures(const CapacityTable& table, const Machine& m, const std::vector<int>& materials,
                    const std::filesystem::path& file) {
  for (const int material : materials) {
    auto name = file;
    if (materials.size() > 1)
      name.replace_filename(file.stem().string() + "-" + m.materials.at(material).name + file.extension().string());
    write_file(name, picture(table, m, material));
  }
}

int capacity(const CapacityArguments& a) {
  tune_process();
  const Registries registries = builtin_registries();
  const Case c = read_case(a.file, registries);
  Machine m = c.machine;
  if (!m.sheet)
    throw std::invalid_argument("the case has no [sheet]: how it is bent (flange, grip, ...) is taken from it");
  CapacityTask task;
  task.places = places_of(m, a);
  task.thinnest = length_of("thinnest", a.thinnest);
  task.thickest = length_of("thickest", a.thickest);
  task.threads = a.threads;
  if (!(task.thinnest > 0 && task.thinnest < task.thickest))
    throw std::invalid_argument("--thinnest must be greater than 0 and less than --thickest");
  for (const std::string& name : a.materials) task.materials.push_back(material_index(m, name));
  if (task.materials.empty()) task.materials.push_back(m.sheet->material);
  const auto begin = std::chrono::steady_clock::now();
  const CapacityTable table = find_capacity(m, registries, task);
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  if (!a.csv.empty()) write_file(a.csv, csv_of(table, m));
  if (!a.svg.empty()) write_pictures(table, m, task.materials, a.svg);
  if (a.json) {
    std::cout << json_of(table, m);
  } else {
    print(table, c, m);
    std::cout << table.load_cases << " load cases in " << fixed(seconds, 2) << " s\n";
  }
  return exit_ok;
}

} // namespace

void add_capacity(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "capacity", "thickest sheet within the limits, by width, place and material",
                  "bedbow capacity cases/hive-lid/case.toml --widths \"100 mm\" \"600 mm\" --svg map.svg");
  auto a = std::make_shared<CapacityArguments>();
  command->add_option("CASE", a->file, "the case file")->required();
  command->add_option("--widths", a->widths, "of the sheet; shares of the bed when left out");
  command->add_option("--centres", a->centres, "of the sheet along the bed; nine places when left out");
  command->add_option("--materials", a->materials, "of the sheet; the case's when left out");
  command->add_option("--thinnest", a->thinnest, "where the search begins")->capture_default_str();
  command->add_option("--thickest", a->thickest, "where it ends")->capture_default_str();
  command->add_option("--csv", a->csv, "file for one row per sheet");
  command->add_option("--svg", a->svg, "file for a shaded picture; with several materials one each");
  command->add_option("--threads", a->threads, "all of the machine's when left out")->check(CLI::Range(1, 4096));
  command->add_flag("--json", a->json, "print JSON for scripts");
  command->callback([&run, a] { run = [a] { return capacity(*a); }; });
}

} // namespace bedbow
