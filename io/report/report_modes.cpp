#include "io/report/report_modes.h"

#include "io/explain/explain.h"
#include "io/report/report_machine.h"
#include "io/results/modes_table.h"
#include "solver/modes/fill_modes.h"

#include <algorithm>

namespace bedbow {

namespace {

std::string lowest(const ModesResult& m) {
  if (m.modes.empty()) return "";
  const ModeShape& first = m.modes.front();
  return "The lowest natural frequency is " + fixed(first.frequency, 1) + " Hz" +
         (first.description.empty() ? "" : " (" + first.description + ")");
}

std::string answer(const ModesResult& m) {
  std::string out = lowest(m);
  if (m.buckling_step.empty()) return out.empty() ? "No modes were requested." : out + ".";
  out += out.empty() ? "Under " : "; under ";
  out += "the loads of step " + m.buckling_step;
  if (m.buckling_factors.empty()) return out + " the machine does not buckle.";
  return out + " the machine buckles at " + fixed(std::ranges::min(m.buckling_factors), 2) + " times their value.";
}

/// Shapes come before the steps: they are what was requested.
void shapes_first(Report& r) {
  std::stable_partition(r.scenes.begin(), r.scenes.end(),
                        [](const ReportScene& s) { return s.kind == ReportScene::Kind::mode; });
  r.first_scene = 0;
}

} // namespace

Report modes_report(const Case& c, const Findings& f, const RunStamp& stamp) {
  const ModesResult m = f.modes.value_or(ModesResult{});
  Report r{f.title + ": vibration and buckling"};
  r.answer = answer(m);
  r.units = c.output;
  r.stamp = stamp;
  r.warnings = f.warnings;
  r.assumptions = f.assumptions;
  r.assumptions.insert(r.assumptions.end(), c.assumptions.begin(), c.assumptions.end());
  if (!m.buckling_factors.empty()) {
    const double least = std::ranges::min(m.buckling_factors);
    const double limit = c.machine.limits.buckling.value_or(usual_buckling_limit);
    r.pass = least >= limit;
    r.checks.push_back({"least buckling load factor", fixed(least, 2), "at least " + fixed(limit, 2), m.buckling_step,
                        *r.pass ? ReportCheck::Outcome::pass : ReportCheck::Outcome::fail});
  }
  add_machine(r, c.machine, f);
  shapes_first(r);
  ReportSection section{"Vibration and buckling",
                        {"Small vibrations of the clamped machine. A mode near 0 Hz means a missing joint. "
                         "Buckling is sudden and without warning."}};
  if (!m.modes.empty())
    section.tables.push_back({"Natural frequencies, joints as in: " + m.joint_state, shape_table(m.modes, "Hz"),
                              "Strained: where the strain energy is. More posts raise a mode that strains the joints, "
                              "a deeper bar one that strains a body."});
  if (!m.buckling_shapes.empty())
    section.tables.push_back(
        {"Buckling under the loads of step " + m.buckling_step, shape_table(m.buckling_shapes, "times load")});
  r.sections.push_back(std::move(section));
  r.sections.push_back({"The case as read"});
  r.sections.back().listing = explain(c, {}, Style(false));
  return r;
}

} // namespace bedbow
