/// \file
/// The entry point from a Machine to its Findings, used by commands, studies, tests, plugins and the library.
#pragma once

#include "solver/findings/findings.h"
#include "solver/registry/registries.h"

namespace bedbow {

class PartCache;

struct AnalysisOptions {
  bool fields = true;         ///< also fill StepResult::fields (what writers draw); studies omit it
  bool bracket = false;       ///< for a case with screws also Findings::bracket: three more solutions, on the same mesh
  bool certificate = true;    ///< also fill StepResult::checks; callers that read only the headline omit it
  PartCache* parts = nullptr; ///< cache of factored parts; null: none
  bool allow_loose = false;   ///< an unrestrained machine is not a failure where its modes are requested
};

/// Solves all steps of a machine: clamp, then bend at each angle; or one step "load" where there is no sheet.
/// Misuse (an inconsistent machine) throws std::invalid_argument; a mechanism or no convergence is a status in
/// the result. Reruns are identical to the bit.
Findings analyse(const Machine& machine, const Registries& registries, const AnalysisOptions& options = {});

} // namespace bedbow
