// The clamp plate 900 x 120 x 20 mm as shells: assembly alone, the bare solver alone, and both.
#include "mesh/mesher.h"
#include "solver/assembly.h"
#include "solver/linear/process.h"
#include "solver/registries.h"

#include <benchmark/benchmark.h>

namespace bedbow {
namespace {

/// A clamp of one plate bar. \param size element size [m]: 3.7, 1.85 and 0.83 mm make 48, 188 and 940 thousand
/// unknowns.
Machine clamp_plate(double size) {
  tune_process();
  Machine m;
  m.materials.push_back({});
  m.materials[0].E = 210e9;
  m.materials[0].nu = 0.3;
  m.materials[0].density = 7850;
  Bar bar;
  bar.name = "plate";
  bar.shape.width = 0.12;
  bar.shape.height = 0.02;
  bar.model = BarModel::plate;
  bar.material = 0;
  bar.length = 0.9;
  m.bodies[1].kind = BodyKind::clamp;
  m.bodies[1].bars.push_back(bar);
  m.solve.element_size = size;
  return m;
}

struct Plate {
  Registries registries = builtin_registries();
  Machine machine;
  Mesh mesh;
  DofMap map;
  ElementData data;
  explicit Plate(const benchmark::State& state)
      : machine(clamp_plate(static_cast<double>(state.range(0)) * 1e-6))
      , mesh(make_mesh(machine, registries.shapes))
      , map(make_dof_map(machine, mesh))
      , data(make_element_data(machine, mesh)) {}
  [[nodiscard]] SymmetricMatrix assemble() const {
    return std::move(assemble_stiffness(machine, mesh, map, data).front());
  }
  void solve(const SymmetricMatrix& k, const char* solver) const {
    const FactorOutcome f = registries.linear_solvers.get(solver).factor(k, hints_of(map.components.front(), false));
    Eigen::MatrixXd b = Eigen::MatrixXd::Ones(k.rows(), 1);
    f.factorization->solve(b);
    benchmark::DoNotOptimize(b.data());
  }
};

void bm_plate_assembly(benchmark::State& state) {
  const Plate p(state);
  for (auto _ : state) benchmark::DoNotOptimize(p.assemble().valuePtr());
  state.counters["unknowns"] = p.map.components.front().size;
}

void bm_plate_bare(benchmark::State& state, const char* solver) {
  const Plate p(state);
  const SymmetricMatrix k = p.assemble();
  for (auto _ : state) p.solve(k, solver);
  state.counters["unknowns"] = static_cast<double>(k.rows());
}

void bm_plate_whole(benchmark::State& state, const char* solver) {
  const Plate p(state);
  for (auto _ : state) p.solve(p.assemble(), solver);
  state.counters["unknowns"] = p.map.components.front().size;
}

// Element size in micrometres.
BENCHMARK(bm_plate_assembly)->Arg(3700)->Arg(1850)->Arg(830)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(bm_plate_bare, cholmod, "cholmod")->Arg(3700)->Arg(1850)->Arg(830)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(bm_plate_whole, auto, "auto") -> Arg(3700) -> Arg(1850) -> Arg(830) -> Unit(benchmark::kMillisecond);

} // namespace
} // namespace bedbow
