/// \file
/// The clamp plate 900 x 120 x 20 mm as shells, for benchmarks of assembly and solvers.
#pragma once

#include "solver/assembly/assembly.h"
#include "solver/registry/registries.h"

#include <benchmark/benchmark.h>

#include <cstdint>

namespace bedbow {

struct ClampPlate {
  Registries registries = builtin_registries();
  Machine machine;
  Mesh mesh;
  DofMap map;
  ElementData data;
  /// \param micrometres element size: 3700, 1850 and 830 make 50, 193 and 951 thousand unknowns.
  explicit ClampPlate(std::int64_t micrometres);
  [[nodiscard]] SymmetricMatrix assemble() const;
  /// One factorization and one solve by the named solver.
  void solve(const SymmetricMatrix& k, const char* solver) const;
};

/// Largest memory that the process has held so far: run one benchmark per process to compare.
double peak_megabytes();

} // namespace bedbow

// Of the whole process: what a second thread does counts, too.
#define PLATE_SIZES                                                                                                    \
  Arg(3700)->Arg(1850)->Arg(830)->MeasureProcessCPUTime()->UseRealTime()->Unit(benchmark::kMillisecond)
