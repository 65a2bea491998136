// The whole analysis of a case in the library compared with one bare factorization and solve of the same matrices.
#include "io/case/case_reader.h"
#include "mesh/build/mesher.h"
#include "mesh/machine/usual_model.h"
#include "solver/analysis.h"
#include "solver/linear/process.h"
#include "solver/model/model.h"
#include "solver/modes/modes.h"

#include <benchmark/benchmark.h>

#include <algorithm>

namespace bedbow {
namespace {

const Case& hive_lid() {
  static const Case c = [] {
    tune_process();
    return read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries());
  }();
  return c;
}

/// hive-lid with bars whose sections stay plane.
Machine with_beams() {
  Machine m = hive_lid().machine;
  for (Body& body : m.bodies)
    for (Bar& bar : body.bars) bar.model = BarModel::beam;
  m.solve.element_size = usual_element_size(m);
  return m;
}

/// hive-lid with a given number of elements along its 900 mm.
Machine with_stations(int count) {
  Machine m = with_beams();
  m.solve.element_size = 0.9 / count;
  return m;
}

/// Bare reference: factorization and one solve of the parts' stiffness matrices, by the named solver.
void bare(benchmark::State& state, const Machine& machine, const char* solver_name) {
  const Registries registries = builtin_registries();
  const Model model = make_model(machine, registries);
  const LinearSolverEntry& solver = registries.linear_solvers.get(solver_name);
  for (auto _ : state)
    for (std::size_t c = 0; c < model.map.substructures.size(); ++c) {
      if (model.map.substructures[c].size == 0) continue;
      const FactorOutcome f = solver.factor(model.factored.stiffness[c], hints_of(model.map.substructures[c], false));
      Eigen::MatrixXd b = Eigen::MatrixXd::Ones(model.map.substructures[c].size, 1);
      f.factorization->solve(b);
      benchmark::DoNotOptimize(b.data());
    }
  state.counters["unknowns"] = model.factored.unknowns;
}

void bm_bare(benchmark::State& state, const char* solver) {
  bare(state, hive_lid().machine, solver);
}
BENCHMARK_CAPTURE(bm_bare, auto, "auto");
BENCHMARK_CAPTURE(bm_bare, cholmod, "cholmod");
BENCHMARK_CAPTURE(bm_bare, simplicial, "simplicial");

/// The machine as one matrix, all unknowns of all parts with the joints that carry while clamped as springs, numbered
/// station by station: the matrix of a solver without substructures. Rigid joints have 1e14 N/m.
SymmetricMatrix whole_machine(const Model& model, const StepSolution& clamped) {
  const FreeMap free = make_free_map(model.map);
  const JointState joints = state_of(model, clamped);
  const JointRows rows = joint_rows(model.mesh, free, joints.rows, joints.angle);
  std::vector<std::pair<double, Eigen::Index>> along; // position of each unknown
  for (std::size_t c = 0; c < free.map.substructures.size(); ++c)
    for (const int node : free.map.substructures[c].nodes)
      for (const int dof : free.map.dofs[node])
        if (dof >= 0) along.emplace_back(model.mesh.nodes[node].x.x(), free.start[c] + dof);
  std::ranges::sort(along);
  std::vector<int> place(along.size());
  for (std::size_t i = 0; i < along.size(); ++i) place[along[i].second] = static_cast<int>(i);
  std::vector<Eigen::Triplet<double>> entries;
  const auto add = [&](Eigen::Index i, Eigen::Index j, double value) {
    const auto [column, row] = std::minmax(place[i], place[j]);
    entries.emplace_back(row, column, value);
  };
  const std::vector<SymmetricMatrix> parts = assemble_stiffness(model.machine, model.mesh, free.map, model.data);
  for (std::size_t c = 0; c < parts.size(); ++c)
    for (Eigen::Index j = 0; j < parts[c].cols(); ++j)
      for (SymmetricMatrix::InnerIterator it(parts[c], j); it; ++it)
        add(free.start[c] + it.row(), free.start[c] + j, it.value());
  const auto count = rows.elongation.rows();
  for (Eigen::Index r = 0; r < count; ++r) {
    const double stiffness = rows.compliance[r] > 0 ? 1 / rows.compliance[r] : 1e14;
    for (decltype(rows.elongation)::InnerIterator i(rows.elongation, r); i; ++i)
      for (decltype(rows.elongation)::InnerIterator j(rows.elongation, r); j && j.col() <= i.col(); ++j)
        add(i.col(), j.col(), stiffness * i.value() * j.value());
  }
  SymmetricMatrix whole(free.size, free.size);
  whole.setFromTriplets(entries.begin(), entries.end());
  return whole;
}

/// Bare reference: the machine as one matrix. \param stations the numbering serves as it is; else the solver orders.
void bm_bare_machine(benchmark::State& state, const char* solver_name, bool stations) {
  const Registries registries = builtin_registries();
  const Model model = make_model(hive_lid().machine, registries);
  const StepsOutcome solved = solve_steps(model, sheet_loads_of(hive_lid().machine, registries));
  const SymmetricMatrix whole = whole_machine(model, solved.steps.at(0));
  const LinearSolverEntry& solver = registries.linear_solvers.get(solver_name);
  FactorHints hints;
  hints.positive = true;
  hints.banded_order = stations;
  for (auto _ : state) {
    const FactorOutcome f = solver.factor(whole, hints);
    if (!f.factorization) return state.SkipWithError("singular");
    Eigen::MatrixXd b = Eigen::MatrixXd::Ones(whole.rows(), 1);
    f.factorization->solve(b);
    benchmark::DoNotOptimize(b.data());
  }
  state.counters["unknowns"] = static_cast<double>(whole.rows());
}
BENCHMARK_CAPTURE(bm_bare_machine, auto_by_station, "auto", true);
BENCHMARK_CAPTURE(bm_bare_machine, auto, "auto", false);
BENCHMARK_CAPTURE(bm_bare_machine, multifrontal, "multifrontal", false);
BENCHMARK_CAPTURE(bm_bare_machine, cholmod, "cholmod", false);
BENCHMARK_CAPTURE(bm_bare_machine, simplicial, "simplicial", false);

void bm_mesh(benchmark::State& state) {
  const Registries registries = builtin_registries();
  for (auto _ : state) benchmark::DoNotOptimize(make_mesh(hive_lid().machine, registries.shapes));
}
BENCHMARK(bm_mesh);

/// As read, with flats that bend across their width, or, with 0, as beams.
Machine of_kind(const benchmark::State& state) {
  return state.range(0) != 0 ? hive_lid().machine : with_beams();
}

void bm_model(benchmark::State& state) {
  const Registries registries = builtin_registries();
  const Machine machine = of_kind(state);
  for (auto _ : state) benchmark::DoNotOptimize(make_model(machine, registries));
}
BENCHMARK(bm_model)->Arg(0)->Arg(1)->ArgName("strips");

/// Mesh, assembly, factorization, all steps with their contact.
void bm_steps(benchmark::State& state) {
  const Registries registries = builtin_registries();
  const Machine machine = of_kind(state);
  const auto sheet = sheet_loads_of(machine, registries);
  for (auto _ : state) {
    const Model model = make_model(machine, registries);
    benchmark::DoNotOptimize(solve_steps(model, sheet));
  }
}
BENCHMARK(bm_steps)->Arg(0)->Arg(1)->ArgName("strips");

/// The same with all findings.
void bm_analyse(benchmark::State& state) {
  const Registries registries = builtin_registries();
  const Machine machine = of_kind(state);
  for (auto _ : state) benchmark::DoNotOptimize(analyse(machine, registries, {false}));
}
BENCHMARK(bm_analyse)->Arg(0)->Arg(1)->ArgName("strips");

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
