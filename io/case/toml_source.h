/// \file
/// From TOML text to CaseNode, with every syntax error that can be told apart, and safe on hostile input.
#pragma once

#include "io/case/case_node.h"
#include "mesh/machine/problem.h"

#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// What was read, and what was not.
struct TomlText {
  CaseNode root;
  std::vector<Problem> problems;
};

/// Reads TOML 1.0. A line that is no TOML is reported and left out, so that several such lines are reported at once;
/// then only part of the file is known, and what seems to be missing may stand in those lines.
TomlText read_toml(std::string_view text);

} // namespace bedbow
