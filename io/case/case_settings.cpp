#include "io/case/case_builder.h"
#include "mesh/machine/usual_model.h"

namespace bedbow {

namespace {

void build_limits(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("limits");
  if (!in) return;
  for (const LimitKind& kind : limit_kinds) b.machine().limits.*kind.member = in->number(kind.key);
}

void build_solve(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("solve");
  SolveSettings& solve = b.machine().solve;
  solve.element_size = usual_element_size(b.machine());
  if (!in) return;
  solve.dimension = in->integer_or("dimension", solve.dimension);
  solve.element_size = in->number_or("element_size", solve.element_size);
  if (in->given("angles")) solve.angles = in->numbers("angles");
  solve.modes = in->integer_or("modes", solve.modes);
  solve.buckling = in->integer_or("buckling", solve.buckling);
  solve.buckling_step = in->text("buckling_step").value_or("");
  solve.lumped_mass = in->choice_or("mass", mass_choices, solve.lumped_mass);
  solve.linear_solver = in->text("linear_solver").value_or("");
  if (!solve.linear_solver.empty() && !b.registries.linear_solvers.find(solve.linear_solver))
    b.wrong(*in, "linear_solver",
            "unknown linear solver \"" + solve.linear_solver + "\"; available: " + b.registries.linear_solvers.names());
}

void build_unit(const CaseValues& in, std::string_view key, OutputUnit& unit) {
  const auto name = in.text(key);
  const auto size = in.number(key);
  if (name && size) unit = {*name, *size};
}

void build_output(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("output");
  if (!in) return;
  build_unit(*in, "length", b.out.output.length);
  build_unit(*in, "force", b.out.output.force);
  build_unit(*in, "stress", b.out.output.stress);
}

} // namespace

void build_settings(const CaseBuilder& b) {
  build_limits(b);
  build_solve(b);
  build_output(b);
  if (const CaseValues* in = b.root.table("plugins")) b.out.plugins = in->texts("files");
}

} // namespace bedbow
