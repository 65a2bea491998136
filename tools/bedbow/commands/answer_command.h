/// \file
/// Common parts of the commands that answer a builder's question: the case, and the output of the answer.
#pragma once

#include "io/answer/answer.h"
#include "io/case/case_reader.h"
#include "solver/findings/findings.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/output_place.h"
#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>

#include <memory>
#include <string>

namespace bedbow {

struct AnswerArguments {
  std::string file, out;
  bool json = false, csv = false;
  std::string table{};
  PluginOptions plugins{};
};

/// Adds CASE, --json, --csv, --table, --out and the plugin options to a command.
void add_answer_options(CLI::App& command, AnswerArguments& a);

/// Index of the step that `--step` names. Throws std::invalid_argument, naming the steps, where there is none.
std::size_t step_named(const Findings& findings, const std::string& name);

/// Loads plugins, reads the case and prints its warnings.
OpenCase open_for_answer(const AnswerArguments& a);

/// What an answer does not change about the machine for which it is given: parts over 100 % or over the case's limit,
/// and what is displaced too far, each as a finding. Bow, bend angle and opening of the nose are left out:
/// they are what the commands are about. \return exit_limit_exceeded where there is any, else exit_ok.
int report_overload(const Verdict& verdict, const OutputUnits& units, Answer& answer);

/// Prints the answer and writes its files.
void give_answer(const AnswerArguments& a, const OpenCase& open, Answer answer);

} // namespace bedbow
