#include "io/case/case_reader.h"
#include "io/draw/bend_line_plots.h"
#include "io/draw/picture.h"
#include "io/files/atomic_file.h"
#include "io/report/report_solve.h"
#include "io/results/result_files.h"
#include "io/results/result_json.h"
#include "io/results/summary.h"
#include "io/text/text.h"
#include "io/text/version.h"
#include "mesh/piece/si.h"
#include "solver/analysis.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/commands/sensitivity.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/output_place.h"
#include "tools/bedbow/support/plugins.h"
#include "tools/bedbow/support/report_error.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <filesystem>
#include <iostream>
#include <memory>

namespace bedbow {

namespace {

struct SolveArguments {
  std::string file, out, picture;
  bool quiet = false, json = false, check_mesh = false, report = false, plots = false;
  bool sensitivity = false, csv = false;
  PluginOptions plugins;
};

/// The results that a finer mesh should not change.
std::vector<std::pair<std::string, double>> headline_values(const Findings& f) {
  std::vector<std::pair<std::string, double>> out;
  for (const StepResult& s : f.steps) {
    for (BodyKind k : all_bodies)
      out.emplace_back(s.name + ": " + to_string(k) + " bow [mm]", s.bow.bow[static_cast<std::size_t>(k)] * 1e3);
    out.emplace_back(s.name + ": angle spread [deg]", si::in_degrees(s.bow.angle_spread));
    double stress = 0;
    for (const BarResult& b : s.bars) stress = std::max(stress, b.stress);
    out.emplace_back(s.name + ": greatest stress [MPa]", stress * 1e-6);
  }
  return out;
}

void print_mesh_check(const Machine& machine, const Registries& registries, const Findings& coarse) {
  Machine finer = machine;
  finer.solve.element_size /= 2;
  AnalysisOptions options;
  options.fields = false;
  const auto a = headline_values(coarse);
  const auto b = headline_values(analyse(finer, registries, options));
  std::cout << "Mesh check: element size halved to " << finer.solve.element_size * 1e3 << " mm\n";
  for (std::size_t i = 0; i < a.size() && i < b.size(); ++i) {
    if (!std::isfinite(a[i].second)) continue;
    const double change = b[i].second != 0 ? (a[i].second / b[i].second - 1) * 100 : 0;
    std::cout << "  " << a[i].first << ": " << fixed(a[i].second, 4) << " -> " << fixed(b[i].second, 4) << " ("
              << fixed(change, 2) << " %)\n";
  }
  std::cout << '\n';
}

/// Report and plots, where requested.
std::vector<ResultFile> further_files(const SolveArguments& a, const Case& c, const Findings& f,
                                      const RunStamp& stamp) {
  std::vector<ResultFile> out;
  if (a.report) out.push_back({"report.html", report_html(solve_report(c, f, stamp))});
  if (a.plots)
    for (const Plot& p : bend_line_plots(f, c.machine.limits, c.output)) out.push_back({p.file + ".svg", plot_svg(p)});
  return out;
}

void print_plugin_findings(const nlohmann::ordered_json& json) {
  if (!json.contains("findings")) return;
  std::cout << "Findings of plugins\n";
  for (const auto& [name, values] : json["findings"].items())
    for (const auto& [key, value] : values.items()) std::cout << "  " << name << ": " << key << " = " << value << '\n';
  std::cout << '\n';
}

int solve(const SolveArguments& a) {
  const OpenCase open = open_case(a.file, a.plugins);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  if (!a.quiet && !a.csv) report_problems(c.warnings, c.source.file);
  if (a.sensitivity) return tell_sensitivity({a.file, a.out, a.json, a.csv, {}, a.plugins}, open);
  AnalysisOptions options;
  options.slip_bounds = true;
  const Findings f = analyse(c.machine, registries, options);
  if (f.status != Status::ok) {
    std::cerr << "bedbow: " << f.trouble << '\n';
    // The last few lines show how it ended.
    for (std::size_t i = f.history.size() > 8 ? f.history.size() - 8 : 0; i < f.history.size(); ++i)
      std::cerr << "  " << f.history[i] << '\n';
    return exit_unsolvable;
  }
  const RunStamp stamp{version(), c.text_hash, open.plugins.loaded};
  auto json = result_json(f, stamp);
  add_findings(open.plugins, f, json);
  const std::filesystem::path directory = output_directory(a.out, a.file);
  std::vector<ResultFile> more = further_files(a, c, f, stamp);
  add_written(open.plugins, f, json, more);
  const auto files = write_results(directory, f, json, more, optional_files());
  if (!a.picture.empty() && !f.steps.empty())
    write_file(a.picture, machine_picture(f.title, f.steps[f.worst_step.value_or(0)], c.output));
  if (a.json) {
    std::cout << json.dump(1) << '\n';
  } else if (!a.quiet) {
    std::cout << summary(f, c.output, style_for(1), c.assumptions) << '\n';
    print_plugin_findings(json);
    if (a.check_mesh) print_mesh_check(c.machine, registries, f);
    std::string written = "Written to " + directory.string() + ":";
    for (const std::string& name : files) written += " " + name;
    for (const std::string& line : wrap(written, 98)) std::cout << line << '\n';
  }
  return f.verdict.pass ? exit_ok : exit_limit_exceeded;
}

} // namespace

void add_solve(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "solve", "solve a case: bow of all bodies, bend angle, utilisation",
                                  "bedbow solve cases/hive-lid/case.toml --out out/hive-lid");
  auto a = std::make_shared<SolveArguments>();
  command->add_option("CASE", a->file, "the case file")->required();
  command->add_option("--out", a->out, "directory for the result files (default: out/<case name>)");
  command->add_flag("--report", a->report, "also write report.html, to be opened in any browser");
  command->add_flag("--plots", a->plots, "also write the plots along the bend line as SVG files");
  command->add_option("--picture", a->picture, "also draw the deformed machine in the worst step into this PNG file");
  add_plugin_options(*command, a->plugins);
  command->add_flag("--quiet", a->quiet, "print nothing");
  command->add_flag("--json", a->json, "print results.json instead of tables");
  command->add_flag("--check-mesh", a->check_mesh, "solve again with half the element size and show the changes");
  auto* sensitivity = command->add_flag("--sensitivity", a->sensitivity,
                                        "show instead the effect of 0.1 mm or 1 % of each size, place and stiffness");
  command->add_flag("--csv", a->csv, "print that table as CSV")->needs(sensitivity);
  command->callback([&run, a] { run = [a] { return solve(*a); }; });
}

} // namespace bedbow
