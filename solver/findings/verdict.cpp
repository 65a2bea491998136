#include "solver/findings/nose_hold.h"
#include "solver/findings/part_peaks.h"
#include "solver/findings/results.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Permitted utilisation where the case sets no limit: 100 %.
constexpr double whole = 1;

/// The step in which a value is clearly the greatest of those over its limit; nullptr where none is.
template <class Value, class Judged>
const StepResult* worst_over(const std::vector<StepResult>& steps, double limit, Value value, Judged judged) {
  const StepResult* worst = nullptr;
  for (const StepResult& s : steps)
    if (judged(s) && value(s) > limit && (!worst || clearly_greater(value(s), value(*worst)))) worst = &s;
  return worst;
}

void judge_bow(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  if (!limits.bow) return;
  for (BodyKind body : all_bodies) {
    const auto bow = [k = static_cast<std::size_t>(body)](const StepResult& s) { return s.bow.bow[k]; };
    const auto judged = [&](const StepResult& s) { return body != BodyKind::apron || judges_bend(s); };
    const StepResult* worst = worst_over(steps, *limits.bow, bow, judged);
    if (!worst) continue;
    v.reasons.push_back({Failure::bows, to_string(body), "bow", bow(*worst), *limits.bow, ReasonOf::length});
    v.reasons.back().step = worst->name;
  }
}

void judge_angle(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  if (!limits.angle) return;
  const auto spread = [](const StepResult& s) { return s.bow.angle_spread; };
  const StepResult* worst = worst_over(steps, *limits.angle, spread, judges_bend);
  if (!worst) return;
  v.reasons.push_back({Failure::bows, "bend angle", "bend angle", spread(*worst), *limits.angle, ReasonOf::angle});
  v.reasons.back().step = worst->name;
}

/// Each part whose utilisation exceeds the limit, in the step with the highest.
void judge_utilisation(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  const double limit = limits.utilisation.value_or(whole);
  for (const PartPeaks& p : part_peaks(steps)) {
    if (!(p.use.value > limit)) continue;
    Reason r{p.check.failure, p.kind ? p.label() : "stress in " + p.name, p.check.what, p.use.value, limit};
    r.step = p.use.step;
    r.x = p.use.x;
    v.reasons.push_back(std::move(r));
  }
}

/// Parts that are displaced too far, each in its worst step.
void judge_displacements(const std::vector<StepResult>& steps, Verdict& v) {
  std::vector<Reason> worst;
  for (const StepResult& s : steps)
    for (const Reason& r : s.displaced) {
      const auto known = std::ranges::find(worst, r.part, &Reason::part);
      if (known == worst.end())
        worst.push_back(r);
      else if (clearly_greater(r.over(), known->over()))
        *known = r;
    }
  v.reasons.insert(v.reasons.end(), worst.begin(), worst.end());
}

/// The nose where it opens over the sheet beyond the case's limit, at its worst station. Without one it is a warning
/// (hold_warning).
void judge_nose(const Machine& machine, const std::vector<StepResult>& steps, Verdict& v) {
  if (!machine.limits.nose_opening) return;
  const double limit = *machine.limits.nose_opening;
  NoseHold worst;
  const StepResult* at = nullptr;
  for (const StepResult& s : steps)
    if (const NoseHold here = nose_hold(s.bend_line);
        here.opening > limit && (!at || clearly_greater(here.opening, worst.opening))) {
      worst = here;
      at = &s;
    }
  if (!at) return;
  v.reasons.push_back({Failure::moves, "nose", "nose opening", worst.opening, limit, ReasonOf::length});
  v.reasons.back().step = at->name;
  v.reasons.back().x = worst.opening_x;
}

} // namespace

Verdict judge(const Machine& machine, const std::vector<StepResult>& steps) {
  Verdict v;
  judge_utilisation(machine.limits, steps, v);
  judge_displacements(steps, v);
  judge_bow(machine.limits, steps, v);
  judge_angle(machine.limits, steps, v);
  judge_nose(machine, steps, v);
  sort_reasons(v.reasons);
  v.pass = v.reasons.empty();
  return v;
}

void warn_of_displacements(const Verdict& verdict, std::vector<std::string>& warnings) {
  for (const Reason& r : verdict.reasons)
    if (r.failure == Failure::moves)
      warnings.push_back(r.part + " is displaced so far in step " + r.step +
                         " that small-displacement theory, and with it every result of this case, is only approximate");
}

} // namespace bedbow
