#include "tools/bedbow/commands/answer_command.h"

#include "io/results/reason_text.h"
#include "io/text/step_label.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/report_error.h"

#include <stdexcept>

namespace bedbow {

void add_answer_options(CLI::App& command, AnswerArguments& a) {
  command.add_option("CASE", a.file, "the case file")->required();
  auto* json = command.add_flag("--json", a.json, "print JSON instead of tables");
  auto* csv = command.add_flag("--csv", a.csv, "print one table as CSV instead")->excludes(json);
  command.add_option("--table", a.table, "table to print, by its name in the JSON (default: the first)")->needs(csv);
  command.add_option("--out", a.out,
                     "also write the JSON, a CSV file per table and the plots as SVG into this directory");
  add_plugin_options(command, a.plugins);
}

std::size_t step_named(const Findings& f, const std::string& name) {
  std::string names;
  for (std::size_t i = 0; i < f.steps.size(); ++i) {
    if (f.steps[i].name == name || step_label(f.steps[i].name) == name) return i;
    names += (names.empty() ? "" : ", ") + f.steps[i].name;
  }
  throw std::invalid_argument("--step: unknown step \"" + name + "\"; available: " + names);
}

OpenCase open_for_answer(const AnswerArguments& a) {
  OpenCase open = open_case(a.file, a.plugins);
  if (!a.json && !a.csv) report_problems(open.value.warnings, open.value.source.file);
  return open;
}

int report_overload(const Verdict& verdict, const OutputUnits& units, Answer& answer) {
  int exit = exit_ok;
  for (const Reason& r : verdict.reasons) {
    if (r.failure == Failure::bows || r.check == "nose opening") continue;
    answer.findings.push_back("over its limit: " + reason_text(r, units));
    exit = exit_limit_exceeded;
  }
  return exit;
}

void give_answer(const AnswerArguments& a, const OpenCase& open, Answer answer) {
  const Case& c = open.value;
  answer.title = c.machine.title;
  answer.plugins = open.plugins.loaded;
  tell_answer(answer, {a.json, a.csv, a.out, a.table}, c.output, c.text_hash);
}

} // namespace bedbow
