/// \file
/// The report of `bedbow sweep`.
#pragma once

#include "io/case/case_reader.h"
#include "io/report/report.h"
#include "io/sweep/variant_store.h"

#include <cstdint>
#include <optional>
#include <string>

namespace bedbow {

/// The variant that is shown: the cheapest that passes.
struct ShownVariant {
  std::uint64_t id = 0;
  Case value;
  Findings findings;
};

/// Number of the first variant of the trade-off; empty where none could be solved.
std::optional<std::uint64_t> variant_to_show(const VariantStore& store);

/// How many variants pass, the trade-off as plot and table, the summary, and one variant's machine.
/// \param summary as the terminal shows it, without colour (see sweep_summary); empty: none.
/// \param shown null: no machine. It must outlive the report.
Report sweep_page(const VariantStore& store, const std::string& title, const std::string& summary,
                  const ShownVariant* shown);

} // namespace bedbow
