#include "solver/bracket.h"

#include "mesh/screw_limits.h"
#include "solver/bend_line.h"
#include "solver/model.h"
#include "solver/results.h"
#include "solver/words.h"

#include <algorithm>

namespace bedbow {

namespace {

BracketStep headline_of(const Model& m, const StepSolution& s) {
  StepResult r;
  fill_bend_line(m, s, r);
  fill_bars(m, s, r);
  fill_dials(m, s, r);
  BracketStep out{s.name, r.bow, 0, std::move(r.dials)};
  for (const BarResult& b : r.bars) out.stress = std::max(out.stress, b.stress);
  return out;
}

BracketSide side_of(const Machine& machine, const Registries& registries, Mesh mesh,
                    const std::optional<SheetLoads>& sheet) {
  BracketSide out;
  const Model model = make_model(machine, registries, std::move(mesh));
  if (!model.structure.mechanisms.empty()) {
    out.status = Status::mechanism;
    out.trouble = describe_mechanism(model.structure.mechanisms.front());
    return out;
  }
  const StepsOutcome solved = solve_steps(model, sheet);
  if (solved.status != StepsOutcome::Status::ok) {
    out.status = solved.status == StepsOutcome::Status::mechanism ? Status::mechanism : Status::no_convergence;
    out.trouble = solved.trouble;
    return out;
  }
  for (const StepSolution& s : solved.steps) out.steps.push_back(headline_of(model, s));
  return out;
}

} // namespace

Bracket bracket_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                   const std::optional<SheetLoads>& sheet) {
  return {side_of(machine, registries, without_slip(machine, mesh), sheet),
          side_of(machine, registries, without_slip_rolling(machine, mesh), sheet),
          side_of(machine, registries, without_shear(machine, mesh), sheet)};
}

} // namespace bedbow
