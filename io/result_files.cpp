#include "io/result_files.h"

#include "io/atomic_file.h"
#include "io/csv.h"
#include "io/json_text.h"
#include "io/pvd.h"
#include "io/vtk_module.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace bedbow {

namespace {

/// One .vtu per step and the .pvd that joins them.
template <class GridOf>
void add_series(FileSet& files, const std::string& stem, const Findings& findings, const GridOf& grid_of) {
  std::vector<PvdEntry> entries;
  for (const StepResult& step : findings.steps) {
    entries.push_back({stem + "_" + std::to_string(entries.size()) + ".vtu", step.name});
    files.add(entries.back().file, vtk_module().vtu(grid_of(step)));
  }
  files.add(stem + ".pvd", pvd(entries));
  for (std::size_t i = entries.size();; ++i) {
    const std::string left_over = stem + "_" + std::to_string(i) + ".vtu";
    if (!std::filesystem::exists(files.directory() / left_over)) break;
    files.retire(left_over);
  }
}

} // namespace

std::vector<std::string> write_results(const std::filesystem::path& directory, const Findings& findings,
                                       const nlohmann::ordered_json& results, const std::vector<ResultFile>& more,
                                       const std::vector<std::string>& stale) {
  FileSet files(directory);
  add_series(files, "assembly", findings, [](const StepResult& s) { return surface_grid(s.fields, s.name); });
  add_series(files, "forces", findings, [](const StepResult& s) { return force_grid(s.fields.forces, s.name); });
  files.add("bend_line.csv", bend_line_csv(findings));
  std::vector<std::string> names{"results.json", "bend_line.csv", "assembly.pvd", "forces.pvd"};
  for (const ResultFile& f : more) {
    files.add(f.name, f.content);
    names.push_back(f.name);
  }
  for (const std::string& name : stale)
    if (std::find(names.begin(), names.end(), name) == names.end() && std::filesystem::exists(directory / name))
      files.retire(name);
  files.add("results.json", json_text(results)); // last: who waits for it finds the others in place
  files.commit();
  return names;
}

} // namespace bedbow
