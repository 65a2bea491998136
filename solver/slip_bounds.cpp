#include "solver/slip_bounds.h"

#include "mesh/check/screw_limits.h"
#include "solver/findings/part_peaks.h"
#include "solver/variant_steps.h"

#include <algorithm>
#include <utility>

namespace bedbow {

namespace {

SlipBoundsStep summary_metrics_of(StepResult r) {
  SlipBoundsStep out{r.name, r.bow, 0, std::move(r.dials)};
  for (const BarResult& b : r.bars) out.stress = std::max(out.stress, b.stress);
  out.use = highest_use(r);
  return out;
}

SlipBoundsSide side_of(VariantSteps variant) {
  SlipBoundsSide out{variant.status, std::move(variant.trouble), {}};
  for (StepResult& s : variant.steps) out.steps.push_back(summary_metrics_of(std::move(s)));
  return out;
}

} // namespace

SlipBounds slip_bounds_of(const Machine& machine, const Registries& registries, const Mesh& mesh,
                          const std::optional<SheetLoads>& sheet) {
  const auto side = [&](Mesh limit) { return side_of(solve_variant(machine, registries, std::move(limit), sheet)); };
  return {side(without_slip(machine, mesh)), side(without_slip_rolling(machine, mesh)),
          side(without_shear(machine, mesh))};
}

FrictionBounds friction_bounds_of(const Model& model, const std::optional<SheetLoads>& sheet) {
  return {side_of(solve_variant(model, sheet, SheetFriction::sliding)),
          side_of(solve_variant(model, sheet, SheetFriction::sticking))};
}

} // namespace bedbow
