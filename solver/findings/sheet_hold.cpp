#include "solver/findings/sheet_hold.h"

#include "solver/model/sheet_friction.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bedbow {

void fill_hold(const Model& m, const StepSolution& step, const SheetLoads& sheet, StepResult& out) {
  const Machine& machine = m.machine;
  if (!step.bending || !machine.body(BodyKind::bed).present() || !machine.body(BodyKind::clamp).present()) return;
  SheetHold hold;
  const double width = machine.sheet->width;
  double pads = 0;
  for (std::size_t r = 0; r < step.rows.size(); ++r) {
    const JointKind kind = m.mesh.joints[static_cast<std::size_t>(step.rows[r].joint)].kind;
    const double force = step.force[static_cast<Eigen::Index>(r)];
    if (kind == JointKind::pad) pads -= std::min(force, 0.0);
    if (kind == JointKind::friction) hold.carried += force;
  }
  const double on_nose = std::max(0.0, pads + step.sheet_lift * width);
  const double on_bed = std::max(0.0, pads + step.sheet_grip * width);
  hold.needs = std::abs(sheet.apron(step.angle) * std::sin(step.angle)) * width;
  hold.has = machine.sheet->friction * (on_nose + on_bed);
  hold.settled = step.friction_settled;
  out.hold = hold;
}

std::vector<std::string> friction_assumptions(const Machine& machine) {
  if (!machine.sheet) return {};
  char text[256];
  std::snprintf(text, sizeof text,
                "the clamped sheet passes pressure, and across the bend line friction up to %.3g times what presses it "
                "on the bed; along the bend line it passes none, and while the clamp is set it slides",
                machine.sheet->friction);
  return {text, "between apron and flange there is no friction: it would tilt the apron's push"};
}

std::vector<std::string> friction_warnings(const std::vector<StepResult>& steps) {
  std::vector<std::string> out;
  for (const StepResult& s : steps)
    if (s.hold && !s.hold->settled)
      out.push_back("step " + s.name + ": the friction of the sheet does not settle in " +
                    std::to_string(most_friction_rounds) +
                    " rounds; the step is solved without it, and its results lie between the friction bounds");
  return out;
}

} // namespace bedbow
