#include "io/case/case_reader.h"
#include "io/explain/explain.h"
#include "io/units/output_units.h"
#include "mesh/build/mesher.h"
#include "mesh/check/sheet_room.h"
#include "mesh/check/swing.h"
#include "mesh/piece/si.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>

#include <iostream>
#include <memory>

namespace bedbow {

namespace {

std::string mesh_size(const Machine& machine, const Registries& registries) {
  const Mesh mesh = make_mesh(machine, registries.shapes);
  std::string out = "mesh: " + std::to_string(mesh.nodes.size()) + " nodes";
  const auto add = [&](std::size_t count, const char* what) {
    if (count > 0) out += ", " + std::to_string(count) + " " + what;
  };
  add(mesh.beams.size(), "beam elements");
  add(mesh.shells.size(), "shell elements");
  add(mesh.joints.size(), "joints and pads");
  return out;
}

/// "greatest bend as drawn: 95.4 deg, where the flange meets clamp.plate".
std::string greatest_bend(const Machine& machine, const Registries& registries) {
  const auto limit = bend_limit(machine, registries.shapes);
  if (!limit) return "greatest bend as drawn: the flange is not obstructed";
  return "greatest bend as drawn: " + fixed(si::in_degrees(limit->angle), 1) + " deg, where the flange meets " +
         limit->by;
}

/// "least flange 3.5 mm; the sheet goes in 60 mm behind the bend line, up to post left middle".
std::string room_of_sheet(const SheetRoom& room, const OutputUnits& units) {
  std::string out = "least flange " + length_text(room.least_flange, units, 1e-4) + "; the sheet goes in ";
  if (!room.depth) return out + "as far as it is long: no stud stands behind it";
  return out + length_text(*room.depth, units, 1e-4) + " behind the bend line, up to " + room.depth_by;
}

int check_case(const std::string& file, const PluginOptions& plugins) {
  const OpenCase opened = open_case(file, plugins);
  const Machine& machine = opened.value.machine;
  std::vector<std::string> found;
  if (machine.sheet && machine.solve.dimension == 3) found.push_back(greatest_bend(machine, opened.registries));
  if (const auto room = sheet_room(machine, opened.registries.shapes))
    found.push_back(room_of_sheet(*room, opened.value.output));
  found.push_back(mesh_size(machine, opened.registries));
  std::cout << explain(opened.value, found, style_for(1));
  return exit_ok;
}

} // namespace

void add_check(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "check", "read a case and report how it was understood and every problem, without solving",
                  "bedbow check cases/hive-lid/case.toml");
  auto file = std::make_shared<std::string>();
  command->add_option("CASE", *file, "the case file")->required();
  auto plugins = std::make_shared<PluginOptions>();
  add_plugin_options(*command, *plugins);
  command->callback([&run, file, plugins] { run = [file, plugins] { return check_case(*file, *plugins); }; });
}

} // namespace bedbow
