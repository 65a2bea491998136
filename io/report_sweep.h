/// \file
/// The report of `bedbow sweep`.
#pragma once

#include "io/report.h"
#include "io/variant_store.h"

#include <string>

namespace bedbow {

/// How many variants pass, the trade-off as plot and table, and the summary.
/// \param summary as the terminal shows it, without colour (see sweep_summary).
Report sweep_page(const VariantStore& store, const std::string& title, const std::string& summary);

} // namespace bedbow
