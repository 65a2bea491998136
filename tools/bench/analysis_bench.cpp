// The whole analysis of a case inside the library against one bare factorization and solve of the same matrices.
#include "io/case_reader.h"
#include "mesh/mesher.h"
#include "solver/analysis.h"
#include "solver/linear/process.h"
#include "solver/model.h"

#include <benchmark/benchmark.h>

namespace bedbow {
namespace {

const Case& hive_lid() {
  static const Case c = [] {
    tune_process();
    return read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries());
  }();
  return c;
}

/// hive-lid with so many elements along its 900 mm.
Machine with_stations(int count) {
  Machine m = hive_lid().machine;
  m.solve.element_size = 0.9 / count;
  return m;
}

/// Bare reference: factorization and one solve of the parts' stiffness matrices, by the named solver.
void bare(benchmark::State& state, const Machine& machine, const char* solver_name) {
  const Registries registries = builtin_registries();
  const Model model = make_model(machine, registries);
  const LinearSolverEntry& solver = registries.linear_solvers.get(solver_name);
  for (auto _ : state)
    for (std::size_t c = 0; c < model.map.components.size(); ++c) {
      if (model.map.components[c].size == 0) continue;
      const FactorOutcome f = solver.factor(model.structure.stiffness[c], hints_of(model.map.components[c], false));
      Eigen::MatrixXd b = Eigen::MatrixXd::Ones(model.map.components[c].size, 1);
      f.factorization->solve(b);
      benchmark::DoNotOptimize(b.data());
    }
  state.counters["unknowns"] = model.structure.unknowns;
}

void bm_bare(benchmark::State& state, const char* solver) {
  bare(state, hive_lid().machine, solver);
}
BENCHMARK_CAPTURE(bm_bare, auto, "auto");
BENCHMARK_CAPTURE(bm_bare, cholmod, "cholmod");
BENCHMARK_CAPTURE(bm_bare, simplicial, "simplicial");

void bm_mesh(benchmark::State& state) {
  const Registries registries = builtin_registries();
  for (auto _ : state) benchmark::DoNotOptimize(make_mesh(hive_lid().machine, registries.shapes));
}
BENCHMARK(bm_mesh);

void bm_model(benchmark::State& state) {
  const Registries registries = builtin_registries();
  for (auto _ : state) benchmark::DoNotOptimize(make_model(hive_lid().machine, registries));
}
BENCHMARK(bm_model);

/// Mesh, assembly, factorization, all steps with their contact.
void bm_steps(benchmark::State& state) {
  const Registries registries = builtin_registries();
  const auto sheet = sheet_loads_of(hive_lid().machine, registries);
  for (auto _ : state) {
    const Model model = make_model(hive_lid().machine, registries);
    benchmark::DoNotOptimize(solve_steps(model, sheet));
  }
}
BENCHMARK(bm_steps);

/// The same with all findings.
void bm_analyse(benchmark::State& state) {
  const Registries registries = builtin_registries();
  for (auto _ : state) benchmark::DoNotOptimize(analyse(hive_lid().machine, registries, {false}));
}
BENCHMARK(bm_analyse);

void bm_bare_stations(benchmark::State& state) {
  bare(state, with_stations(static_cast<int>(state.range(0))), "auto");
}
BENCHMARK(bm_bare_stations)->Arg(100)->Arg(1000)->Arg(10000)->Unit(benchmark::kMillisecond);

/// Growth with the number of stations: the slope between 100 and 10,000 in log-log is the exponent.
void bm_stations(benchmark::State& state) {
  const Registries registries = builtin_registries();
  const Machine machine = with_stations(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(analyse(machine, registries, {false}));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(bm_stations)->Arg(100)->Arg(1000)->Arg(10000)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace bedbow
