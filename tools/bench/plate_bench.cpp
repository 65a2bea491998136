// The clamp plate 900 x 120 x 20 mm as shells: assembly alone, the bare solver alone, and both.
#include "tools/bench/clamp_plate.h"

namespace bedbow {
namespace {

void count(benchmark::State& state, const ClampPlate& p) {
  state.counters["unknowns"] = p.map.substructures.front().size;
  state.counters["peak_MB"] = peak_megabytes();
}

void bm_plate_assembly(benchmark::State& state) {
  const ClampPlate p(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(p.assemble().valuePtr());
  count(state, p);
}

void bm_plate_bare(benchmark::State& state, const char* solver) {
  const ClampPlate p(state.range(0));
  const SymmetricMatrix k = p.assemble();
  for (auto _ : state) p.solve(k, solver);
  count(state, p);
}

void bm_plate_whole(benchmark::State& state, const char* solver) {
  const ClampPlate p(state.range(0));
  for (auto _ : state) p.solve(p.assemble(), solver);
  count(state, p);
}

BENCHMARK(bm_plate_assembly)->PLATE_SIZES;
BENCHMARK_CAPTURE(bm_plate_bare, cholmod, "cholmod")->PLATE_SIZES;
BENCHMARK_CAPTURE(bm_plate_whole, auto, "auto") -> PLATE_SIZES;

} // namespace
} // namespace bedbow
