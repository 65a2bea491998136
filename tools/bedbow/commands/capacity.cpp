#include "io/case/case_reader.h"
#include "io/files/atomic_file.h"
#include "io/report/report_capacity.h"
#include "io/text/nearest.h"
#include "io/text/text.h"
#include "io/text/version.h"
#include "mesh/piece/material.h"
#include "solver/analysis.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/output_place.h"
#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iostream>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

struct CapacityArguments {
  std::string file, out, csv, svg, thickest = "6 mm", thinnest = "0.3 mm";
  std::vector<std::string> widths, centres, materials;
  int threads = 0;
  bool json = false, report = false;
  PluginOptions plugins;
};

constexpr int default_centres = 9;

double thickness_of(const std::string& option, const std::string& text) {
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
    // A sheet too wide for every requested place is put in the middle.
    if (out.size() == before && a.centres.empty() && width <= to - from + slack)
      out.push_back({width, (from + to) / 2});
  }
  if (out.empty()) throw std::invalid_argument("no sheet of these widths fits on the bed at these centres");
  return out;
}

/// Index of a material in the machine's list, to which built-in ones are added.
int material_index(Machine& m, const std::string& name) {
  const auto it = std::ranges::find(m.materials, name, &Material::name);
  if (it != m.materials.end()) return static_cast<int>(it - m.materials.begin());
  const Material* found = find_material(name);
  if (!found) {
    std::vector<std::string> names;
    for (const Material& known : builtin_materials()) names.push_back(known.name);
    throw std::invalid_argument("--materials: unknown material \"" + name + "\"; nearest is \"" + nearest(name, names) +
                                "\" (`bedbow list` shows them all)");
  }
  m.materials.push_back(*found);
  return static_cast<int>(m.materials.size()) - 1;
}

void print(const CapacityTable& table, const Case& c, const Machine& m) {
  const Style style = style_for(1);
  std::cout << style.bold(printable(m.title)) << "\n\nThickest sheet within the limits, in " << c.output.length.name
            << "\n"
            << capacity_table(table, m, c.output).render(style)
            << "Caution: the machine's limit is not the operator's; thick sheet springs when it slips.\n";
}

void write_pictures(const CapacityTable& table, const Machine& m, const std::vector<int>& materials,
                    const std::filesystem::path& file) {
  for (const int material : materials) {
    auto name = file;
    if (materials.size() > 1)
      name.replace_filename(file.stem().string() + "-" + m.materials.at(material).name + file.extension().string());
    write_file(name, heat_map_svg(capacity_map(table, m, material)));
  }
}

/// The case's own sheet is shown in the machine.
void write_report(const CapacityTable& table, const OpenCase& open, const Machine& m,
                  const std::filesystem::path& directory) {
  const Case& c = open.value;
  const Findings findings = analyse(c.machine, open.registries);
  write_file(directory / "report.html",
             report_html(capacity_report(c, table, m, findings, {version(), c.text_hash, open.plugins.loaded})));
}

int capacity(const CapacityArguments& a) {
  const OpenCase open = open_case(a.file, a.plugins);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  Machine m = c.machine;
  if (!m.sheet) throw std::invalid_argument("the case has no [sheet], from which flange, grip, ... are taken");
  CapacityTask task;
  task.places = places_of(m, a);
  task.thinnest = thickness_of("thinnest", a.thinnest);
  task.thickest = thickness_of("thickest", a.thickest);
  task.threads = a.threads;
  if (!(task.thinnest > 0 && task.thinnest < task.thickest))
    throw std::invalid_argument("--thinnest must be greater than 0 and less than --thickest");
  for (const std::string& name : a.materials) task.materials.push_back(material_index(m, name));
  if (task.materials.empty()) task.materials.push_back(m.sheet->material);
  const auto begin = std::chrono::steady_clock::now();
  const CapacityTable table = find_capacity(m, registries, task);
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  if (!a.csv.empty()) write_file(a.csv, capacity_csv(table, m));
  if (!a.svg.empty()) write_pictures(table, m, task.materials, a.svg);
  if (a.report) write_report(table, open, m, output_directory(a.out, a.file));
  if (a.json) {
    std::cout << capacity_json(table, m);
  } else {
    print(table, c, m);
    std::cout << table.load_cases << " load cases in " << fixed(seconds, 2) << " s\n";
    if (a.report) std::cout << "Written to " << output_directory(a.out, a.file).string() << ": report.html\n";
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
  command->add_option("--widths", a->widths, "widths of the sheet (default: fractions of the bed)");
  command->add_option("--centres", a->centres, "centres of the sheet along the bed (default: nine places)");
  command->add_option("--materials", a->materials, "materials of the sheet (default: the case's)");
  command->add_option("--thinnest", a->thinnest, "thickness at which the search begins")->capture_default_str();
  command->add_option("--thickest", a->thickest, "thickness at which it ends")->capture_default_str();
  command->add_option("--csv", a->csv, "file for one row per sheet");
  command->add_option("--svg", a->svg, "file for a shaded picture, one per material");
  command->add_flag("--report", a->report, "also write report.html, to be opened in any browser");
  command->add_option("--out", a->out, "directory for report.html (default: out/<case name>)");
  command->add_option("--threads", a->threads, "number of threads (default: all)")->check(CLI::Range(1, 4096));
  command->add_flag("--json", a->json, "print JSON for scripts");
  add_plugin_options(*command, a->plugins);
  command->callback([&run, a] { run = [a] { return capacity(*a); }; });
}

} // namespace bedbow
