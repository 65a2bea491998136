#include "solver/slip_bounds.h"

#include "mesh/check/screw_limits.h"
#include "solver/findings/bend_line.h"
#include "solver/findings/certificate.h"
#include "solver/findings/results.h"
#include "solver/model/describe.h"
#include "solver/model/model.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

StepResult result_of(const Model& m, const StepSolution& s) {
  StepResult r;
  r.name = s.name;
  fill_bend_line(m, s, r);
  fill_bars(m, s, r);
  fill_dials(m, s, r);
  fill_joints(m, s, r); // the reactions of holds, which equilibrium needs
  fill_checks(m, s, r);
  return r;
}

SlipBoundsStep summary_metrics_of(StepResult r) {
  SlipBoundsStep out{r.name, r.bow, 0, std::move(r.dials)};
  for (const BarResult& b : r.bars) {
    out.stress = std::max(out.stress, b.stress);
    out.use = std::fmax(out.use, b.utilisation);
  }
  for (const JointResult& j : r.joints) out.use = std::fmax(out.use, j.utilisation);
  return out;
}

SlipBoundsSide side_of(const Model& model, const std::optional<SheetLoads>& sheet, SheetFriction friction) {
  SlipBoundsSide out;
  if (!model.factored.mechanisms.empty()) {
    out.status = Status::mechanism;
    out.trouble = describe_mechanism(model.factored.mechanisms.front());
    return out;
  }
  const StepsOutcome solved = solve_steps(model, sheet, friction);
  if (solved.status != Status::ok) {
    out.status = solved.status;
    out.trouble = solved.trouble;
    return out;
  }
  std::vector<StepResult> steps;
  for (const StepSolution& s : solved.steps) steps.push_back(result_of(model, s));
  if (out.trouble = missed_by(steps, believed); !out.trouble.empty()) {
    out.status = Status::inaccurate;
    return out;
  }
  for (StepResult& s : steps) out.steps.push_back(summary_metrics_of(std::move(s)));
  return out;
}

} // namespace

SlipBounds slip_bounds_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                          const std::optional<SheetLoads>& sheet) {
  const auto side = [&](Mesh limit) {
    return side_of(make_model(machine, registries, std::move(limit)), sheet, SheetFriction::by_coefficient);
  };
  return {side(without_slip(machine, mesh)), side(without_slip_rolling(machine, mesh)),
          side(without_shear(machine, mesh))};
}

FrictionBounds friction_bounds_of(const Model& model, const std::optional<SheetLoads>& sheet) {
  return {side_of(model, sheet, SheetFriction::sliding), side_of(model, sheet, SheetFriction::sticking)};
}

} // namespace bedbow
