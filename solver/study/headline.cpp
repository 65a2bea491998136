#include "solver/study/headline.h"

#include "solver/nose_hold.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

void raise(double& most, double value) {
  if (std::isfinite(value) && !(most >= value)) most = value;
}

void look_at_utilisation(const StepResult& step, Headline& out) {
  const auto look = [&](const std::string& name, double value) {
    if (!clearly_greater(value, out.utilisation)) return;
    out.utilisation = value;
    out.utilisation_at = name;
  };
  for (const BarResult& b : step.bars) look(b.name, b.utilisation);
  for (const auto& [kind, list] : {std::pair{"post ", &step.posts}, std::pair{"cam ", &step.cams},
                                   std::pair{"hinge ", &step.hinges}, std::pair{"screws ", &step.screws}})
    for (const JointResult& j : *list) look((j.name.starts_with(kind) ? "" : kind) + j.name, j.utilisation);
}

void look_at_angle(const Findings& f, Headline& out) {
  for (std::size_t i = f.steps.size() > 1 ? 1 : 0; i < f.steps.size(); ++i) { // nothing is bent while clamping
    const BowResult& b = f.steps[i].bow;
    if (!std::isfinite(b.angle_spread) || out.angle_spread >= b.angle_spread) continue;
    out.angle_spread = b.angle_spread;
    out.angle_mean = b.angle_mean;
  }
}

} // namespace

Headline headline(const Findings& f) {
  Headline out;
  out.bow.fill(nan);
  out.straightness.fill(nan);
  out.angle_mean = out.angle_spread = out.buckling = nan;
  for (const StepResult& step : f.steps) {
    for (std::size_t k = 0; k < 3; ++k) {
      raise(out.bow[k], step.bow.bow[k]);
      raise(out.straightness[k], step.bow.straightness[k]);
    }
    look_at_utilisation(step, out);
    out.nose_opening = std::max(out.nose_opening, nose_hold(step.bend_line).opening);
    for (const JointResult& j : step.posts) out.post_force = std::max(out.post_force, j.value);
  }
  look_at_angle(f, out);
  if (f.modes && !f.modes->buckling_factors.empty()) out.buckling = std::ranges::min(f.modes->buckling_factors);
  out.mass = f.mass;
  out.pass = f.verdict.pass;
  for (const std::string& reason : f.verdict.reasons) out.reasons += (out.reasons.empty() ? "" : "; ") + reason;
  return out;
}

} // namespace bedbow
