#include "solver/findings/bend_range.h"
#include "solver/findings/limited.h"
#include "solver/findings/results.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Every value that is over its limit, in the step where it is greatest.
void judge_limited(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  for (const Limited& l : limited_values()) {
    const std::optional<double>& limit = limits.*l.limit;
    if (const Peak worst = greatest(l, steps); limit && worst.value > *limit)
      v.reasons.push_back({l.failure, l.part, l.check, worst.value, *limit, l.of, worst.step, worst.x});
  }
}

/// Each part whose utilisation exceeds the limit, in the step with the highest.
void judge_utilisation(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  const double limit = limit_or_usual(limits, &Limits::utilisation);
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

} // namespace

Verdict judge(const Machine& machine, const std::vector<StepResult>& steps) {
  Verdict v;
  judge_utilisation(machine.limits, steps, v);
  judge_displacements(steps, v);
  if (const auto far = far_from_the_bend(steps)) v.reasons.push_back(*far);
  judge_limited(machine.limits, steps, v);
  sort_reasons(v.reasons);
  v.pass = v.reasons.empty();
  return v;
}

void warn_of_displacements(const Verdict& verdict, std::vector<std::string>& warnings) {
  for (const Reason& r : verdict.reasons)
    if (r.failure == Failure::moves && r.check != "nose opening")
      warnings.push_back((r.check == "deviation" ? "the bend angle deviates so far in step "
                                                 : r.part + " is displaced so far in step ") +
                         r.step +
                         " that small-displacement theory, and with it every result of this case, is only approximate");
}

} // namespace bedbow
