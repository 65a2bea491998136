/// \file
/// From TOML text to CaseNode, with every syntax error that can be separated, and safe on hostile input.
#pragma once

#include "io/case/case_node.h"
#include "mesh/machine/problem.h"

#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// What was read, and the errors.
struct TomlText {
  CaseNode root;
  std::vector<Problem> problems;
};

/// Reads TOML 1.0. A line that is not valid TOML is reported and skipped, so that several such lines are reported at
/// once; then only part of the file is known, and keys that seem to be missing may be in those lines.
TomlText read_toml(std::string_view text);

} // namespace bedbow
