#include "io/case/case_reader.h"
#include "io/report/report_modes.h"
#include "io/results/modes_table.h"
#include "io/results/reason_text.h"
#include "io/results/result_files.h"
#include "io/results/result_json.h"
#include "io/text/text.h"
#include "io/text/version.h"
#include "solver/analysis.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/output_place.h"
#include "tools/bedbow/support/plugins.h"
#include "tools/bedbow/support/report_error.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <iostream>
#include <memory>

namespace bedbow {

namespace {

constexpr int usual_modes = 6, usual_factors = 2, width = 98;

struct ModesArguments {
  std::string file, out, step;
  int modes = -1, buckling = -1;
  PluginOptions plugins;
  bool lumped = false, json = false, quiet = false, report = false;
};

/// The command line takes precedence over the case, the case over the defaults.
void ask(const ModesArguments& a, Machine& machine) {
  SolveSettings& solve = machine.solve;
  const bool loaded = machine.sheet || machine.gravity || !machine.loads.empty();
  if (solve.modes == 0) solve.modes = usual_modes;
  if (solve.buckling == 0 && loaded) solve.buckling = usual_factors;
  if (a.modes >= 0) solve.modes = a.modes;
  if (a.buckling >= 0) solve.buckling = a.buckling;
  if (!a.step.empty()) solve.buckling_step = a.step;
  solve.lumped_mass = solve.lumped_mass || a.lumped;
}

void print(const Case& c, const Findings& f) {
  const Style style = style_for(1);
  std::cout << style.bold(printable(f.title)) << "\n\n";
  if (f.modes) std::cout << modes_table(*f.modes, style) << '\n';
  if (!f.verdict.pass) std::cout << "Verdict: " << style.bad("a limit is exceeded") << '\n';
  for (const std::string& r : reason_text(f.verdict.reasons, c.output))
    std::cout << list_item(printable(r), width, "  - ");
  if (!f.warnings.empty() || !f.assumptions.empty() || !c.assumptions.empty())
    std::cout << "Warnings and assumptions\n";
  for (const auto* list : {&f.warnings, &f.assumptions, &c.assumptions})
    for (const std::string& w : *list) std::cout << list_item(printable(w), width, "  - ");
  std::cout << "\nSmall vibrations of the clamped machine. A mode near 0 Hz means a missing joint.\n"
               "Buckling is sudden and without warning. A computed result does not prove a machine safe.\n";
}

int modes(const ModesArguments& a) {
  OpenCase open = open_case(a.file, a.plugins);
  Case& c = open.value;
  if (!a.quiet) report_problems(c.warnings, c.source.file);
  ask(a, c.machine);
  AnalysisOptions options;
  options.allow_mechanisms = true;
  const Findings f = analyse(c.machine, open.registries, options);
  if (f.status != Status::ok) {
    std::cerr << "bedbow: " << f.trouble << '\n';
    return exit_unsolvable;
  }
  const RunStamp stamp{version(), c.text_hash, open.plugins.loaded};
  auto json = result_json(f, stamp);
  add_findings(open.plugins, f, json);
  const auto directory = output_directory(a.out, a.file);
  std::vector<ResultFile> more;
  if (a.report) more.push_back({"report.html", report_html(modes_report(c, f, stamp))});
  add_written(open.plugins, f, json, more);
  const auto files = write_results(directory, f, json, more, optional_files());
  if (a.json) {
    std::cout << json.dump(1) << '\n';
  } else if (!a.quiet) {
    print(c, f);
    std::string written = "Written to " + directory.string() + ":";
    for (const std::string& name : files) written += " " + name;
    for (const std::string& line : wrap(written, width)) std::cout << line << '\n';
  }
  return f.verdict.pass ? exit_ok : exit_limit_exceeded;
}

} // namespace

void add_modes(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "modes", "natural frequencies of the clamped machine and its buckling load factors",
                  "bedbow modes cases/hive-lid/case.toml --out out/hive-lid");
  const auto a = std::make_shared<ModesArguments>();
  command->add_option("CASE", a->file, "the case file")->required();
  command->add_option("--out", a->out, "directory for the result files (default: out/<case name>)");
  command->add_option("--modes", a->modes, "number of natural frequencies (default: as in [solve], else 6)")
      ->check(CLI::Range(0, 1000));
  command
      ->add_option("--buckling", a->buckling,
                   "number of load factors (default: as in [solve], else 2 if there are loads)")
      ->check(CLI::Range(0, 1000));
  command->add_option("--step", a->step,
                      "step whose loads are multiplied, such as \"bend 90 deg\" (default: the worst)");
  add_plugin_options(*command, a->plugins);
  command->add_flag("--lumped", a->lumped, "use lumped masses at the nodes instead of consistent ones");
  command->add_flag("--report", a->report, "also write report.html: the shapes animated in 3D, in any browser");
  command->add_flag("--json", a->json, "print results.json instead of tables");
  command->add_flag("--quiet", a->quiet, "print nothing");
  command->callback([&run, a] { run = [a] { return modes(*a); }; });
}

} // namespace bedbow
