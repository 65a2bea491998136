#include "io/results/result_files.h"

#include "io/files/atomic_file.h"
#include "io/results/csv.h"
#include "io/text/json_text.h"
#include "io/vtk/pvd.h"
#include "io/vtk/vtk_module.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cstdio>

namespace bedbow {

namespace {

/// Retires STEM_N.vtu of an earlier run, from N = `first` on.
void retire_from(FileSet& files, const std::string& stem, std::size_t first) {
  for (std::size_t i = first;; ++i) {
    const std::string left_over = stem + "_" + std::to_string(i) + ".vtu";
    if (!std::filesystem::exists(files.directory() / left_over)) break;
    files.retire(left_over);
  }
}

/// One .vtu per item and the .pvd that joins them. No items, no .pvd where `always` is false. \return what the .pvd
/// names.
template <class Items, class NameOf, class GridOf>
std::vector<PvdEntry> add_series(FileSet& files, const std::string& stem, const Items& items, const NameOf& name_of,
                                 const GridOf& grid_of, bool always = true) {
  std::vector<PvdEntry> entries;
  for (const auto& item : items) {
    entries.push_back({stem + "_" + std::to_string(entries.size()) + ".vtu", name_of(item)});
    files.add(entries.back().file, vtk_module().vtu(grid_of(item)));
  }
  if (always || !entries.empty())
    files.add(stem + ".pvd", pvd(entries));
  else if (std::filesystem::exists(files.directory() / (stem + ".pvd")))
    files.retire(stem + ".pvd");
  retire_from(files, stem, entries.size());
  return entries;
}

/// assembly.pvd, the name of machine.pvd up to version 0.1: kept for one release, over the same files.
void add_former_name(FileSet& files, const std::vector<PvdEntry>& machine) {
  files.add("assembly.pvd", pvd(machine, "renamed: see machine.pvd, which has the same steps"));
  retire_from(files, "assembly", 0);
}

std::string shape_name(const char* format, const ModeShape& shape) {
  std::array<char, 40> head{};
  std::snprintf(head.data(), head.size(), format, shape.frequency);
  return head.data() + shape.description;
}

void add_shapes(FileSet& files, const ModesResult& modes, std::vector<std::string>& names) {
  const auto add = [&](const char* stem, const char* format, const std::vector<ModeShape>& shapes) {
    const auto name_of = [&](const ModeShape& s) { return shape_name(format, s); };
    add_series(
        files, stem, shapes, name_of, [&](const ModeShape& s) { return surface_grid(s.fields, name_of(s)); }, false);
    if (!shapes.empty()) names.push_back(std::string(stem) + ".pvd");
  };
  add("modes", "%.2f Hz: ", modes.modes);
  add("buckling", "%.2f times the load: ", modes.buckling_shapes);
}

} // namespace

std::vector<std::string> result_names(const Findings& findings) {
  std::vector<std::string> out{"results.json", "bend_line.csv", "assembly.pvd"};
  const auto add = [&](const std::string& stem, std::size_t count) {
    out.push_back(stem + ".pvd");
    for (std::size_t i = 0; i < count; ++i) out.push_back(stem + "_" + std::to_string(i) + ".vtu");
  };
  add("machine", findings.steps.size());
  add("forces", findings.steps.size());
  add("modes", findings.modes ? findings.modes->modes.size() : 0);
  add("buckling", findings.modes ? findings.modes->buckling_shapes.size() : 0);
  return out;
}

std::vector<std::string> write_results(const std::filesystem::path& directory, const Findings& findings,
                                       const nlohmann::ordered_json& results, const std::vector<ResultFile>& more,
                                       const std::vector<std::string>& stale) {
  FileSet files(directory);
  std::vector<std::string> names{"results.json", "bend_line.csv", "machine.pvd", "forces.pvd"};
  const auto name_of = [](const StepResult& s) { return s.name; };
  add_former_name(files, add_series(files, "machine", findings.steps, name_of,
                                    [](const StepResult& s) { return surface_grid(s.fields, s.name); }));
  add_series(files, "forces", findings.steps, name_of,
             [](const StepResult& s) { return force_grid(s.fields.forces, s.name); });
  add_shapes(files, findings.modes.value_or(ModesResult{}), names);
  files.add("bend_line.csv", bend_line_csv(findings));
  for (const ResultFile& f : more) {
    files.add(f.name, f.content);
    names.push_back(f.name);
  }
  for (const std::string& name : stale)
    if (std::find(names.begin(), names.end(), name) == names.end() && std::filesystem::exists(directory / name))
      files.retire(name);
  files.add("results.json", json_text(results)); // last: a program that waits for it finds the others in place
  files.commit();
  return names;
}

} // namespace bedbow
