// Ten modes against one factorization and 40 solves of the same matrix, and against the static solve of a large plate.
#include "io/case/case_reader.h"
#include "solver/analysis.h"
#include "solver/linear/process.h"
#include "solver/model/model.h"
#include "solver/modes/modes.h"

#include <benchmark/benchmark.h>

#include <memory>

namespace bedbow {
namespace {

constexpr int wanted = 10;

/// A machine with its clamp step solved, ready to vibrate.
struct Prepared {
  explicit Prepared(Machine m)
      : machine(std::move(m))
      , registries(builtin_registries())
      , model(make_model(machine, registries))
      , solved(solve_steps(model, sheet_loads_of(machine, registries)))
      , state(state_of(model, solved.steps.at(0))) {}
  Machine machine;
  Registries registries;
  Model model;
  StepsOutcome solved;
  JointState state;
};

const Prepared& prepared_hive_lid() {
  static const auto p = [] {
    tune_process();
    return std::make_unique<Prepared>(
        read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries()).machine);
  }();
  return *p;
}

/// A cantilever plate of 1 m with a given number of elements per side, loaded at its free corner.
Machine plate(int side) {
  tune_process();
  const std::string n = std::to_string(side);
  return read_case_text(
             "title = \"plate\"\n[[panel]]\nname = \"plate\"\ncorner = [\"0 mm\", \"0 mm\", \"0 mm\"]\n"
             "edge_a = [\"1000 mm\", \"0 mm\", \"0 mm\"]\nedge_b = [\"0 mm\", \"1000 mm\", \"0 mm\"]\n"
             "thickness = \"10 mm\"\nmaterial = \"S275JR\"\ndivisions = [" +
                 n + ", " + n +
                 "]\n[[hold]]\nfrom = [\"0 mm\", \"0 mm\", \"0 mm\"]\nto = [\"0 mm\", \"1000 mm\", \"0 mm\"]\n"
                 "holds = [\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"]\n[[load]]\nat = [\"1000 mm\", \"1000 "
                 "mm\", \"0 mm\"]\nforce = [\"0 N\", \"0 N\", \"-10 N\"]\n",
             builtin_registries())
      .machine;
}

void ten_modes(benchmark::State& state, const Prepared& p) {
  int solves = 0;
  for (auto _ : state) {
    const VibratingMachine v(p.model, p.state, p.registries.linear_solvers, false);
    const Modes modes = v.lowest(wanted);
    if (modes.values.size() != wanted) state.SkipWithError("modes are missing");
    solves = modes.operations;
  }
  state.counters["unknowns"] = p.model.factored.unknowns;
  state.counters["solves"] = solves;
}

/// The matrix that the modes invert, with the joints' rows: one factorization, 40 solves.
void factor_and_solves(benchmark::State& state, const Prepared& p) {
  const VibratingMachine v(p.model, p.state, p.registries.linear_solvers, false);
  for (auto _ : state) {
    const JointedMatrix a = v.shifted(v.shift());
    Eigen::MatrixXd b = Eigen::MatrixXd::Ones(a.size(), 1);
    for (int i = 0; i < 40; ++i) {
      b.setOnes();
      a.solve(b);
      benchmark::DoNotOptimize(b.data());
    }
  }
}

void bm_hive_lid_modes(benchmark::State& state) {
  ten_modes(state, prepared_hive_lid());
}
BENCHMARK(bm_hive_lid_modes)->MeasureProcessCPUTime()->Unit(benchmark::kMicrosecond);
void bm_hive_lid_factor_40_solves(benchmark::State& state) {
  factor_and_solves(state, prepared_hive_lid());
}
BENCHMARK(bm_hive_lid_factor_40_solves)->MeasureProcessCPUTime()->Unit(benchmark::kMicrosecond);

constexpr int side = 182; // 183 x 183 nodes, 201 thousand unknowns

void bm_plate_static(benchmark::State& state) {
  const Machine machine = plate(side);
  const Registries registries = builtin_registries();
  AnalysisOptions options;
  options.fields = false;
  for (auto _ : state) benchmark::DoNotOptimize(analyse(machine, registries, options));
}
BENCHMARK(bm_plate_static)->MeasureProcessCPUTime()->Unit(benchmark::kMillisecond);

void bm_plate_modes(benchmark::State& state) {
  const Prepared p(plate(side));
  ten_modes(state, p);
}
BENCHMARK(bm_plate_modes)->MeasureProcessCPUTime()->Unit(benchmark::kMillisecond);

} // namespace
} // namespace bedbow
