/// \file
/// From a case file to a Machine and its studies.
#pragma once

#include "io/case/case_source.h"
#include "io/units/output_units.h"
#include "mesh/machine/machine.h"
#include "mesh/machine/stock.h"
#include "solver/registry/registries.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// One thing that a sweep varies: one key, or several moved together.
struct SweepVary {
  std::vector<std::string> keys;           ///< dotted
  std::vector<std::vector<CaseNode>> rows; ///< each with one value per key
  SourcePos pos;
};

struct SweepSpec {
  std::vector<SweepVary> vary;
  std::optional<std::uint64_t> sample; ///< size of the Latin hypercube; every combination where omitted
  std::uint64_t seed = 1;              ///< of the sample
};

/// One unknown of a fit: keys that share a value, and its bounds.
struct FitUnknown {
  std::vector<std::string> keys;
  std::optional<CaseNode> from, to;
  SourcePos pos;
};

/// A case that was read without errors, possibly with warnings.
struct Case {
  Machine machine;
  OutputUnits output;
  SweepSpec sweep;
  std::vector<StockItem> stock;
  std::vector<FitUnknown> fit;
  std::vector<std::string> plugins;
  std::vector<Problem> warnings;        ///< sorted by place
  std::vector<std::string> assumptions; ///< defaults that the case does not override: "sheet.moment_law: ..."
  std::string text_hash;                ///< SHA-256 of the file, and of its mesh where it has one
  CaseSource source;                    ///< for variants, see with_values
};

/// Interprets a case. Throws CaseError with every problem found, sorted by position.
/// \param registries shapes, moment laws and solvers that the case may name.
Case understand(CaseSource source, const Registries& registries);

/// Reads and interprets a case file. Throws FileError, CaseError.
Case read_case(const std::filesystem::path& file, const Registries& registries);

/// The same from text. \param file the name used in messages.
Case read_case_text(std::string_view text, const Registries& registries, const std::string& file = "case");

} // namespace bedbow
