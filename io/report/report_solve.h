/// \file
/// The report of `bedbow solve`.
#pragma once

#include "io/case/case_reader.h"
#include "io/report/report.h"

namespace bedbow {

/// Answer, limits, machine, plots, tables and inputs of a solved case. \param findings must outlive the report, which
/// draws from its fields.
Report solve_report(const Case& c, const Findings& findings, const RunStamp& stamp);

/// The answer in one sentence: within the limits or not, with the main results.
std::string solve_answer(const Case& c, const Findings& findings);

/// Fills the report's checks, and the note that explains their numbers.
void add_solve_checks(Report& report, const Case& c, const Findings& findings);

/// One line per limit that a case can set, worst case of all steps.
std::vector<ReportCheck> solve_checks(const Case& c, const Findings& findings);

} // namespace bedbow
