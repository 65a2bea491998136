#include "solver/study/summary_metrics.h"

#include "mesh/piece/si.h"
#include "solver/findings/part_peaks.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

void raise(double& most, double value) {
  if (std::isfinite(value) && !(most >= value)) most = value;
}

void look_at_bow(const StepResult& step, SummaryMetrics& out) {
  for (const BodyKind body : all_bodies) {
    if (body == BodyKind::apron && !judges_bend(step)) continue;
    const auto k = static_cast<std::size_t>(body);
    raise(out.bow[k], step.bow.bow[k]);
    raise(out.straightness[k], step.bow.straightness[k]);
  }
}

void look_at_parts(const std::vector<StepResult>& steps, SummaryMetrics& out) {
  for (const PartPeaks& p : part_peaks(steps)) {
    if (p.kind == JointKind::post) out.post_force = std::max(out.post_force, p.load.value);
    if (!clearly_greater(p.use.value, out.utilisation)) continue;
    out.utilisation = p.use.value;
    out.utilisation_at = p.kind ? p.label() : p.name;
  }
}

void look_at_angle(const Findings& f, SummaryMetrics& out) {
  for (const StepResult& s : f.steps) {
    const BowResult& b = s.bow;
    if (!judges_bend(s) || !std::isfinite(b.angle_spread) || out.angle_spread >= b.angle_spread) continue;
    out.angle_spread = b.angle_spread;
    out.angle_mean = b.angle_mean;
  }
}

} // namespace

SummaryMetrics headline(const Findings& f) {
  SummaryMetrics out;
  out.bow.fill(nan);
  out.straightness.fill(nan);
  out.angle_mean = out.angle_spread = out.buckling = nan;
  for (const StepResult& step : f.steps) look_at_bow(step, out);
  look_at_parts(f.steps, out);
  look_at_angle(f, out);
  if (f.modes && !f.modes->buckling_factors.empty()) out.buckling = std::ranges::min(f.modes->buckling_factors);
  out.mass = f.mass;
  out.pass = f.verdict.pass;
  out.reasons = f.verdict.reasons;
  return out;
}

} // namespace bedbow
