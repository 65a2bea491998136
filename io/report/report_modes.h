/// \file
/// The report of `bedbow modes`.
#pragma once

#include "io/case/case_reader.h"
#include "io/report/report.h"

namespace bedbow {

/// Lowest frequency and least load factor, animated shapes in 3D, tables. \param findings with modes; must outlive
/// the report, which draws from its fields.
Report modes_report(const Case& c, const Findings& findings, const RunStamp& stamp);

} // namespace bedbow
