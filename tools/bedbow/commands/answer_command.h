/// \file
/// Common parts of the commands that answer a builder's question: the case, and the output of the answer.
#pragma once

#include "io/answer/answer.h"
#include "io/case/case_reader.h"
#include "io/units/dimension.h"
#include "solver/findings/findings.h"
#include "tools/bedbow/commands/commands.h"
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

/// A quantity of an option [SI]. Throws std::invalid_argument naming the option.
double quantity_of(const std::string& option, const std::string& text, Dim due);

/// Index of the step that `--step` names. Throws std::invalid_argument, naming the steps, where there is none.
std::size_t step_named(const Findings& findings, const std::string& name);

/// Loads plugins, reads the case and prints its warnings.
OpenCase open_for_answer(const AnswerArguments& a);

/// Prints the answer and writes its files.
void give_answer(const AnswerArguments& a, const OpenCase& open, Answer answer);

} // namespace bedbow
