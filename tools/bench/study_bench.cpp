// Studies: variants of the hive-lid folder per second, compared with the bare factorizations and solves of one, and
// sheets on a machine factored once.
#include "io/sweep/variant.h"
#include "solver/linear/process.h"
#include "solver/model/model.h"
#include "solver/model/substructure_cache.h"
#include "solver/study/prepared.h"
#include "solver/study/worker_pool.h"

#include <benchmark/benchmark.h>

namespace bedbow {
namespace {

const Case& sweep_case() {
  static const Case c = [] {
    tune_process();
    return read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid-sweep/case.toml", builtin_registries());
  }();
  return c;
}

/// One variant: values applied, case read, analysed, headline and cost. With a cache of parts as in a sweep, or
/// without.
void bm_variant(benchmark::State& state) {
  const Registries registries = builtin_registries();
  const VariantMaker maker(sweep_case(), registries);
  SubstructureCache parts;
  std::uint64_t id = 0;
  for (auto _ : state)
    benchmark::DoNotOptimize(maker.make(id++ % maker.space().size(), state.range(0) ? &parts : nullptr));
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(bm_variant)->Arg(0)->Arg(1)->ArgName("cache");

/// Of that, the part before the analysis: copy of the case, schema, machine.
void bm_variant_understood(benchmark::State& state) {
  const Registries registries = builtin_registries();
  CaseSource source = sweep_case().source;
  std::erase_if(source.root.entries, [](const CaseEntry& e) { return e.key == "sweep"; });
  const SweepVary& vary = sweep_case().sweep.vary.front();
  for (auto _ : state) {
    const std::vector<std::pair<std::string, CaseNode>> values{{vary.keys[0], vary.rows[0][0]}};
    benchmark::DoNotOptimize(understand(with_values(source, values), registries));
  }
}
BENCHMARK(bm_variant_understood);

/// Bare reference: the factorizations, one right-hand side for each joint functional, and two for each of four steps
/// (loads, joint forces).
void bm_variant_bare(benchmark::State& state, const char* name) {
  const Registries registries = builtin_registries();
  const Model model = make_model(sweep_case().machine, registries);
  const LinearSolverEntry& solver = registries.linear_solvers.get(name);
  constexpr Eigen::Index steps = 4;
  for (auto _ : state)
    for (std::size_t c = 0; c < model.map.substructures.size(); ++c) {
      const Substructure& comp = model.map.substructures[c];
      if (comp.size == 0) continue;
      const FactorOutcome f = solver.factor(model.factored.stiffness[c], hints_of(comp, false));
      const auto rows = static_cast<Eigen::Index>(model.factored.functionals_of[c].size());
      Eigen::MatrixXd b = Eigen::MatrixXd::Ones(comp.size, rows + 2 * steps);
      f.factorization->solve(b);
      benchmark::DoNotOptimize(b.data());
    }
}
BENCHMARK_CAPTURE(bm_variant_bare, auto, "auto");
BENCHMARK_CAPTURE(bm_variant_bare, simplicial, "simplicial");

/// All variants on one and on two threads: wall time.
void bm_threads(benchmark::State& state) {
  const Registries registries = builtin_registries();
  const VariantMaker maker(sweep_case(), registries);
  for (auto _ : state)
    for_each_index(maker.space().size(), static_cast<int>(state.range(0)), [&](std::uint64_t id) {
      thread_local SubstructureCache parts;
      benchmark::DoNotOptimize(maker.make(id, &parts));
    });
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(maker.space().size()));
}
BENCHMARK(bm_threads)->Arg(1)->Arg(2)->UseRealTime()->Unit(benchmark::kMillisecond);

/// Sheets of many widths on a machine factored once; items are load cases (a sheet at one apron angle, or clamped).
void bm_load_cases(benchmark::State& state) {
  const Registries registries = builtin_registries();
  std::vector<SheetPlace> places;
  for (double width = 0.1; width < 0.85; width += 0.05) places.push_back({width, 0.45});
  PreparedMachine prepared(sweep_case().machine, registries, places);
  const auto look = state.range(0) ? PreparedMachine::Look::stresses : PreparedMachine::Look::movements;
  const int material = sweep_case().machine.sheet->material;
  std::size_t i = 0;
  for (auto _ : state) benchmark::DoNotOptimize(prepared.solve(places[i++ % places.size()], material, 1.5e-3, look));
  state.SetItemsProcessed(prepared.load_cases());
}
BENCHMARK(bm_load_cases)->Arg(0)->Arg(1)->ArgName("stresses");

} // namespace
} // namespace bedbow
