/// \file
/// A machine that differs in one respect, solved again for comparison: slip bounds, seats of joints on arms, bounds of
/// the sheet's friction.
#pragma once

#include "mesh/build/mesh.h"
#include "solver/findings/findings.h"
#include "solver/model/steps.h"
#include "solver/registry/registries.h"
#include "solver/sheet/sheet_law.h"

#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// Bend line, stresses of bars, joints, dials and certificate of each step.
struct VariantSteps {
  Status status = Status::ok;
  std::string trouble;           ///< why there are no steps
  std::vector<StepResult> steps; ///< empty unless status is ok
};

/// Solves all steps of a model; inaccurate where a step misses its certificate.
/// \param sheet its line loads. \param friction of the sheet while it is bent.
VariantSteps solve_variant(const Model& model, const std::optional<SheetLoads>& sheet, SheetFriction friction);

/// The same for a machine on its own mesh, friction by its coefficient. Throws as make_model does.
VariantSteps solve_variant(const Machine& machine, const Registries& registries, Mesh mesh,
                           const std::optional<SheetLoads>& sheet);

} // namespace bedbow
