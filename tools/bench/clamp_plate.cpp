#include "tools/bench/clamp_plate.h"

#include "mesh/build/mesher.h"
#include "solver/linear/process.h"

#include <sys/resource.h>

namespace bedbow {
namespace {

/// A clamp of one plate bar.
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

} // namespace

ClampPlate::ClampPlate(std::int64_t micrometres)
    : machine(clamp_plate(static_cast<double>(micrometres) * 1e-6))
    , mesh(make_mesh(machine, registries.shapes))
    , map(make_dof_map(machine, mesh))
    , data(make_element_data(machine, mesh, registries.elements)) {}

SymmetricMatrix ClampPlate::assemble() const {
  return std::move(assemble_stiffness(machine, mesh, map, data).front());
}

void ClampPlate::solve(const SymmetricMatrix& k, const char* solver) const {
  const FactorOutcome f = registries.linear_solvers.get(solver).factor(k, hints_of(map.substructures.front(), false));
  Eigen::MatrixXd b = Eigen::MatrixXd::Ones(k.rows(), 1);
  f.factorization->solve(b);
  benchmark::DoNotOptimize(b.data());
}

double peak_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

} // namespace bedbow
