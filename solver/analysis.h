/// \file
/// The entry point from a Machine to its Findings, used by commands, studies, tests, plugins and the library.
#pragma once

#include "solver/findings/findings.h"
#include "solver/registry/registries.h"

namespace bedbow {

class SubstructureCache;

struct AnalysisOptions {
  bool fields = true;       ///< also fill StepResult::fields (what writers draw); studies omit it
  bool slip_bounds = false; ///< for a case with screws also Findings::slip_bounds: three more solutions, on the same
                            ///< mesh; for joints on arms without seats also Findings::arm_seats: one more; for a
                            ///< held sheet also Findings::friction_bounds: two more of the steps alone
  bool certificate = true;  ///< also fill StepResult::checks; callers that read only the headline omit it
  SubstructureCache* parts = nullptr; ///< cache of factored parts; null: none
  bool allow_mechanisms = false;      ///< an unrestrained machine is not a failure where its modes are requested
};

/// Solves all steps of a machine: clamp, then bend at each angle; or one step "load" where there is no sheet.
/// Misuse (an inconsistent machine) throws std::invalid_argument; a mechanism or no convergence is a status in
/// the result. Reruns are identical to the bit.
Findings analyse(const Machine& machine, const Registries& registries, const AnalysisOptions& options = {});

} // namespace bedbow
