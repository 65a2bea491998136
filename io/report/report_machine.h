/// \file
/// The machine of a report: its states, its round parts, and the values shown for bars, joints and mode shapes.
#pragma once

#include "io/report/report.h"

namespace bedbow {

/// Puts the machine into the page: a scene per step, vibration and buckling shape, the worst step first; studs, cams,
/// pins and the sheet. \param report its units must be set. \param findings must outlive the report.
void add_machine(Report& report, const Machine& machine, const Findings& findings);

/// Values shown for each bar and joint of a step.
std::map<std::string, ReportFacts> step_facts(const StepResult& step, const OutputUnits& units);

/// Values shown for a shape as a whole (under the empty name) and for each bar: its share of the greatest displacement.
/// \param buckling the shape's `frequency` is a load factor.
std::map<std::string, ReportFacts> shape_facts(const ModeShape& shape, bool buckling);

} // namespace bedbow
