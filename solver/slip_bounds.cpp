#include "solver/slip_bounds.h"

#include "mesh/check/screw_limits.h"
#include "solver/variant_steps.h"

#include <algorithm>
#include <utility>

namespace bedbow {

namespace {

SlipBoundsStep summary_metrics_of(StepResult r) {
  SlipBoundsStep out{r.name, r.bow, 0, std::move(r.dials)};
  for (const BarResult& b : r.bars) out.stress = std::max(out.stress, b.stress);
  return out;
}

SlipBoundsSide side_of(const Machine& machine, const Registries& registries, Mesh mesh,
                       const std::optional<SheetLoads>& sheet) {
  VariantSteps variant = solve_variant(machine, registries, std::move(mesh), sheet);
  SlipBoundsSide out{variant.status, std::move(variant.trouble), {}};
  for (StepResult& s : variant.steps) out.steps.push_back(summary_metrics_of(std::move(s)));
  return out;
}

} // namespace

SlipBounds slip_bounds_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                          const std::optional<SheetLoads>& sheet) {
  return {side_of(machine, registries, without_slip(machine, mesh), sheet),
          side_of(machine, registries, without_slip_rolling(machine, mesh), sheet),
          side_of(machine, registries, without_shear(machine, mesh), sheet)};
}

} // namespace bedbow
