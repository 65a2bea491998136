#include "io/case/case_builder.h"

namespace bedbow {

namespace {

void build_limits(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("limits");
  if (!in) return;
  Limits& limits = b.machine().limits;
  limits.bow = in->number("bow");
  limits.angle = in->number("angle");
  limits.utilisation = in->number("utilisation");
  limits.buckling = in->number("buckling");
  limits.nose_opening = in->number("nose_opening");
}

void build_solve(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("solve");
  if (!in) return;
  SolveSettings& solve = b.machine().solve;
  solve.dimension = in->integer_or("dimension", solve.dimension);
  solve.element_size = in->number_or("element_size", solve.element_size);
  if (in->given("angles")) solve.angles = in->numbers("angles");
  solve.modes = in->integer_or("modes", 0);
  solve.buckling = in->integer_or("buckling", 0);
  solve.buckling_step = in->text("buckling_step").value_or("");
  const std::string mass = in->text("mass").value_or("consistent");
  solve.lumped_mass = mass == "lumped";
  if (mass != "lumped" && mass != "consistent")
    b.wrong(*in, "mass", "unknown mass \"" + mass + "\"; available: consistent, lumped");
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
