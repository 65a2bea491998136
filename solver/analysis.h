/// \file
/// The one door from a Machine to its Findings. Commands, studies, tests, plugins and the library come in by it.
#pragma once

#include "solver/findings/findings.h"
#include "solver/registry/registries.h"

namespace bedbow {

class PartCache;

struct AnalysisOptions {
  bool fields = true;         ///< also fill StepResult::fields (what writers draw); studies leave it out
  bool bracket = false;       ///< for a case with screws also Findings::bracket: three more solutions, on the same mesh
  bool certificate = true;    ///< also fill StepResult::checks; those that read only the headline leave it out
  PartCache* parts = nullptr; ///< where parts factored before are looked up and kept; null: nowhere
  bool allow_loose = false;   ///< a machine that nothing holds is no failure where its modes are asked for
};

/// Solves all steps of a machine: clamp, then bend at each angle; or one step "load" where there is no sheet.
/// Misuse (a machine that makes no sense) throws std::invalid_argument; a mechanism or no convergence is a status in
/// the result. Reruns are identical to the bit.
Findings analyse(const Machine& machine, const Registries& registries, const AnalysisOptions& options = {});

} // namespace bedbow
