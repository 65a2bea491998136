/// \file
/// The report of `bedbow capacity`.
#pragma once

#include "io/answer/capacity_out.h"
#include "io/case/case_reader.h"
#include "io/report/report.h"

namespace bedbow {

/// Shaded picture, plot and table of each material, and the machine with the case's own sheet.
/// \param machine source of the materials. \param findings of the case; must outlive the report.
Report capacity_report(const Case& c, const CapacityTable& table, const Machine& machine, const Findings& findings,
                       const RunStamp& stamp);

} // namespace bedbow
