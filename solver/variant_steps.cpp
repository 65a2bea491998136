#include "solver/variant_steps.h"

#include "solver/findings/bend_line.h"
#include "solver/findings/certificate.h"
#include "solver/findings/results.h"

#include <utility>

namespace bedbow {

VariantSteps solve_variant(const Model& model, const std::optional<SheetLoads>& sheet, SheetFriction friction) {
  StepsOutcome solved = solve_steps(model, sheet, friction);
  if (solved.status != Status::ok) return {solved.status, std::move(solved.trouble), {}};
  VariantSteps out;
  for (const StepSolution& s : solved.steps) {
    StepResult& r = out.steps.emplace_back();
    r.name = s.name;
    fill_bend_line(model, s, r);
    fill_bars(model, s, r);
    fill_joints(model, s, r); // the reactions of holds, which equilibrium needs
    fill_dials(model, s, r);
    fill_checks(model, s, r);
  }
  if (std::string trouble = missed_by(out.steps, believed); !trouble.empty())
    return {Status::inaccurate, std::move(trouble), {}};
  return out;
}

VariantSteps solve_variant(const Machine& machine, const Registries& registries, Mesh mesh,
                           const std::optional<SheetLoads>& sheet) {
  return solve_variant(make_model(machine, registries, std::move(mesh)), sheet, SheetFriction::by_coefficient);
}

} // namespace bedbow
