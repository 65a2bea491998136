#include "io/key_tables.h"
#include "io/output_units.h"
#include "io/table.h"
#include "mesh/material.h"
#include "solver/registries.h"
#include "tools/bedbow/commands.h"
#include "tools/bedbow/exit_code.h"
#include "tools/bedbow/plugins.h"

#include <CLI/CLI.hpp>

#include <iostream>
#include <memory>

namespace bedbow {

namespace {

std::string known(double value, double unit, int decimals = 0) {
  return value > 0 ? fixed(value / unit, decimals) : "-";
}

void list_materials(const Style& style) {
  std::cout << style.bold("materials") << '\n';
  TextTable table({{"name", Align::left},
                   {"E GPa"},
                   {"G GPa"},
                   {"density kg/m^3"},
                   {"yield MPa"},
                   {"tensile MPa"},
                   {"source", Align::left}});
  for (const Material& m : builtin_materials())
    table.row({m.name, known(m.E, 1e9, 1), known(m.G, 1e9, 1), known(m.density, 1), known(m.yield, 1e6),
               known(m.tensile, 1e6), m.source});
  std::cout << table.render(style);
}

template <class Entry>
void list_entries(const Registry<Entry>& registry, const std::string& heading, const Style& style) {
  std::cout << '\n' << style.bold(heading) << '\n';
  TextTable table({{"name", Align::left}, {"what it is", Align::left}, {"source", Align::left}, {"from", Align::left}});
  for (const Entry& e : registry.entries()) table.row({e.name, e.description, e.source, e.origin});
  std::cout << table.render(style);
}

void list_writers(const Style& style) {
  std::cout << '\n' << style.bold("result writers") << '\n';
  TextTable table({{"file", Align::left}, {"what it is", Align::left}, {"format", Align::left}, {"from", Align::left}});
  table.row({"results.json", "all numbers, unit in the key", "JSON, RFC 8259", "built in"});
  table.row({"bend_line.csv", "one row per station and step", "CSV, RFC 4180", "built in"});
  table.row(
      {"assembly.pvd", "one .vtu per step: surfaces, movement, stress", "VTK XML, unstructured grid", "built in"});
  table.row({"forces.pvd", "one .vtu per step: joint and pad forces", "VTK XML, unstructured grid", "built in"});
  std::cout << table.render(style);
}

int list(const PluginOptions& options) {
  const Style style = style_for(1);
  Registries registries = builtin_registries();
  Plugins plugins;
  for (const std::string& file : options.files) load_plugin(file, registries, plugins);
  list_materials(style);
  list_entries(registries.shapes, "section shapes", style);
  list_entries(registries.moment_laws, "moment laws", style);
  list_entries(registries.linear_solvers, "linear solvers", style);
  if (!plugins.findings.entries().empty()) list_entries(plugins.findings, "findings", style);
  list_writers(style);
  list_entries(registries.elements, "elements", style);
  return exit_ok;
}

int list_keys() {
  std::cout << key_tables(case_schema());
  return exit_ok;
}

} // namespace

void add_list(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "list", "what can be named in a case file, and where its values come from", "bedbow list");
  auto keys = std::make_shared<bool>(false);
  command->add_flag("--keys", *keys, "the keys of a case file instead, as the tables of docs/case-format.md");
  auto plugins = std::make_shared<PluginOptions>();
  command->add_option("--plugin", plugins->files, "also what this shared object brings; repeatable")
      ->allow_extra_args(false);
  command->callback([&run, keys, plugins] { run = [keys, plugins] { return *keys ? list_keys() : list(*plugins); }; });
}

} // namespace bedbow
