/// \file
/// results.json: all results, for programs. Keys are documented in docs/results.md.
#pragma once

#include "solver/findings/findings.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <vector>

namespace bedbow {

/// Origin of a result. No time or directory: the same case gives the same bytes.
struct RunStamp {
  std::string version;              ///< of the program
  std::string case_sha256;          ///< of the case file's bytes; empty where there was no file
  std::vector<std::string> plugins; ///< file names and versions, in the order loaded
};

/// Findings in mm, N, MPa, deg and Hz with the unit in the key; values without meaning (NaN) are null.
nlohmann::ordered_json result_json(const Findings& findings, const RunStamp& stamp);

} // namespace bedbow
