#include "io/schema/key_tables.h"
#include "io/schema/schema_brought.h"
#include "io/text/table.h"
#include "io/text/text.h"
#include "io/units/output_units.h"
#include "mesh/piece/material.h"
#include "solver/conformance/conformance.h"
#include "solver/registry/registries.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>

#include <cstdio>
#include <iostream>
#include <memory>

namespace bedbow {

namespace {

std::string known(double value, double unit, int decimals = 0) {
  return value > 0 ? fixed(value / unit, decimals) : "-";
}

/// Range of a sheet's yield from coil to coil.
std::string range_of(const Material& m) {
  if (!m.yield_range) return "-";
  return fixed(m.yield_range->least / 1e6, 0) + "-" + fixed(m.yield_range->greatest / 1e6, 0);
}

void list_materials(const Style& style) {
  std::cout << style.bold("materials") << '\n';
  TextTable table({{"name", Align::left},
                   {"E GPa"},
                   {"G GPa"},
                   {"density kg/m^3"},
                   {"yield MPa"},
                   {"range MPa"},
                   {"tensile MPa"},
                   {"K MPa"},
                   {"n"},
                   {"source", Align::left}});
  for (const Material& m : builtin_materials())
    table.row({m.name, known(m.E, 1e9, 1), known(m.G, 1e9, 1), known(m.density, 1), known(m.yield, 1e6), range_of(m),
               known(m.tensile, 1e6), known(m.K.value_or(0), 1e6), known(m.n.value_or(0), 1, 3), m.source});
  std::cout << table.render(style);
}

template <class Entry>
void list_entries(const Registry<Entry>& registry, const std::string& heading, const Style& style) {
  std::cout << '\n' << style.bold(heading) << '\n';
  TextTable table(
      {{"name", Align::left}, {"description", Align::left}, {"source", Align::left}, {"from", Align::left}});
  for (const Entry& e : registry.entries()) table.row({e.name, e.description, e.source, e.origin});
  std::cout << table.render(style);
}

void list_writers(const Registry<WriterEntry>& brought, const Style& style) {
  std::cout << '\n' << style.bold("result writers") << '\n';
  TextTable table({{"file", Align::left}, {"content", Align::left}, {"format", Align::left}, {"from", Align::left}});
  table.row({"results.json", "all numbers, unit in the key", "JSON, RFC 8259", "built in"});
  table.row({"bend_line.csv", "one row per station and step", "CSV, RFC 4180", "built in"});
  table.row(
      {"machine.pvd", "one .vtu per step: surfaces, displacement, stress", "VTK XML, unstructured grid", "built in"});
  table.row({"forces.pvd", "one .vtu per step: joint and pad forces", "VTK XML, unstructured grid", "built in"});
  for (const WriterEntry& e : brought.entries()) table.row({e.name, e.description, e.source, e.origin});
  std::cout << table.render(style);
}

int list(const PluginOptions& options) {
  const Style style = style_for(1);
  OpenCase open;
  load_plugins(options, open);
  const Registries& registries = open.registries;
  const Plugins& plugins = open.plugins;
  list_materials(style);
  list_entries(registries.shapes, "section shapes", style);
  list_entries(registries.moment_laws, "moment laws", style);
  list_entries(registries.linear_solvers, "linear solvers", style);
  if (!plugins.findings.entries().empty()) list_entries(plugins.findings, "findings", style);
  list_writers(plugins.writers, style);
  list_entries(registries.elements, "elements", style);
  return exit_ok;
}

std::string figure(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.3g", value);
  return text;
}

int show_proof(const std::string& name, const PluginOptions& options) {
  OpenCase open;
  load_plugins(options, open);
  const Style style = style_for(1);
  bool pass = true;
  for (const Conformance& proof : check_conformance(name, open.registries)) {
    std::cout << style.bold(proof.kind + " '" + proof.name + "'") << " (" << proof.origin << ")\n";
    TextTable table({{"requirement", Align::left}, {"found"}, {"bound"}, {"", Align::left}, {"", Align::left}});
    for (const ProofCheck& c : proof.checks)
      table.row({c.what, figure(c.value), figure(c.allowed),
                 c.pass ? TextTable::Cell("ok") : TextTable::Cell("FAILS", Mark::bad),
                 c.pass ? "" : printable(c.note)});
    std::cout << table.render(style) << (proof.pass() ? "proved" : style.bad("not proved")) << '\n';
    pass = pass && proof.pass();
  }
  return pass ? exit_ok : exit_limit_exceeded;
}

int list_keys(const PluginOptions& options) {
  OpenCase open;
  load_plugins(options, open);
  std::cout << key_tables(with_brought(case_schema(), open.registries));
  return exit_ok;
}

} // namespace

void add_list(CLI::App& app, Run& run) {
  CLI::App* command = add_command(
      app, "list", "list materials, shapes, laws and solvers for case files, with the sources of their values",
      "bedbow list\nbedbow list --prove beam");
  auto keys = std::make_shared<bool>(false);
  command->add_flag("--keys", *keys, "print the keys of a case file instead, as the tables of docs/case-format.md");
  auto plugins = std::make_shared<PluginOptions>();
  add_plugin_option(*command, *plugins);
  auto proved = std::make_shared<std::string>();
  command->add_option("--prove", *proved, "run the conformance suite of this entry instead; exit status 1 if it fails")
      ->excludes("--keys");
  command->callback([&run, keys, plugins, proved] {
    run = [keys, plugins, proved] {
      if (!proved->empty()) return show_proof(*proved, *plugins);
      return *keys ? list_keys(*plugins) : list(*plugins);
    };
  });
}

} // namespace bedbow
