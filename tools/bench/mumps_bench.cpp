// The clamp plate's matrix by MUMPS on one core, for comparison; built if Debian's libmumps-seq-dev is installed.
#include "tools/bench/clamp_plate.h"

#include <benchmark/benchmark.h>
#include <dmumps_c.h>

#include <stdexcept>
#include <string>
#include <vector>

namespace bedbow {
namespace {

/// MUMPS numbers its arrays from one, as its guide does.
int& icntl(DMUMPS_STRUC_C& id, int i) {
  return id.icntl[i - 1];
}

void run(DMUMPS_STRUC_C& id, int job) {
  id.job = job;
  dmumps_c(&id);
  if (id.infog[0] < 0) throw std::runtime_error("MUMPS: error " + std::to_string(id.infog[0]));
}

/// Analysis, factorization and one solve. \param ordering ICNTL(7): 0 approximate minimum degree, 5 METIS.
void solve(const SymmetricMatrix& k, int ordering) {
  std::vector<int> rows, columns;
  std::vector<double> values, b(static_cast<std::size_t>(k.rows()), 1.0);
  rows.reserve(static_cast<std::size_t>(k.nonZeros()));
  columns.reserve(rows.capacity());
  values.reserve(rows.capacity());
  for (int c = 0; c < k.cols(); ++c)
    for (SymmetricMatrix::InnerIterator it(k, c); it; ++it) {
      rows.push_back(static_cast<int>(it.row()) + 1);
      columns.push_back(c + 1);
      values.push_back(it.value());
    }
  DMUMPS_STRUC_C id{};
  id.par = 1;
  id.sym = 1;                // positive definite
  id.comm_fortran = -987654; // MPI_COMM_WORLD, as in the guide
  run(id, -1);
  for (const int stream : {1, 2, 3, 4}) icntl(id, stream) = stream == 4 ? 0 : -1;
  icntl(id, 7) = ordering;
  id.n = static_cast<int>(k.rows());
  id.nnz = k.nonZeros();
  id.irn = rows.data();
  id.jcn = columns.data();
  id.a = values.data();
  id.rhs = b.data();
  run(id, 6); // all three
  benchmark::DoNotOptimize(b.data());
  run(id, -2);
}

void bm_plate_mumps(benchmark::State& state, int ordering) {
  const ClampPlate p(state.range(0));
  const SymmetricMatrix k = p.assemble();
  for (auto _ : state) solve(k, ordering);
  state.counters["unknowns"] = static_cast<double>(k.rows());
  state.counters["peak_MB"] = peak_megabytes();
}

BENCHMARK_CAPTURE(bm_plate_mumps, amd, 0)->PLATE_SIZES;
BENCHMARK_CAPTURE(bm_plate_mumps, metis, 5)->PLATE_SIZES;

} // namespace
} // namespace bedbow
