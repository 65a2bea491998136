#include "solver/nose_hold.h"
#include "solver/results.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>

namespace bedbow {

namespace {

void fail(Verdict& v, const char* format, auto... values) {
  std::array<char, 256> text{};
  std::snprintf(text.data(), text.size(), format, values...);
  v.pass = false;
  v.reasons.emplace_back(text.data());
}

void judge_bow(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  if (!limits.bow) return;
  for (BodyKind body : all_bodies) {
    const StepResult* worst = nullptr;
    const auto k = static_cast<std::size_t>(body);
    for (const StepResult& s : steps)
      if (s.bow.bow[k] > *limits.bow && (!worst || clearly_greater(s.bow.bow[k], worst->bow.bow[k]))) worst = &s;
    if (worst)
      fail(v, "%s bows %.3f mm in step %s, limit %.3f mm", to_string(body).c_str(), worst->bow.bow[k] * 1e3,
           worst->name.c_str(), *limits.bow * 1e3);
  }
}

void judge_angle(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  if (!limits.angle) return;
  const StepResult* worst = nullptr;
  for (const StepResult& s : steps)
    if (s.bow.angle_spread > *limits.angle && (!worst || clearly_greater(s.bow.angle_spread, worst->bow.angle_spread)))
      worst = &s;
  constexpr double degree = std::numbers::pi / 180;
  if (worst)
    fail(v, "bend angle varies by %.3f deg in step %s, limit %.3f deg", worst->bow.angle_spread / degree,
         worst->name.c_str(), *limits.angle / degree);
}

/// "pin pressure" of the check that uses most of what it has; empty where there is none.
std::string governing(const std::vector<Check>& checks) {
  const Check* worst = worst_check(checks);
  return worst ? worst->what : "";
}

/// The greatest utilisation over the steps of each thing that is over the limit.
void judge_utilisation(const Limits& limits, const std::vector<StepResult>& steps, Verdict& v) {
  if (!limits.utilisation) return;
  struct Item {
    std::string name, step;
    double value;
    std::string why; ///< the check that says so
  };
  std::vector<Item> worst;
  const auto look = [&](const std::string& name, double value, const std::string& step, const std::string& why = "") {
    if (!(value > *limits.utilisation)) return;
    for (Item& i : worst)
      if (i.name == name) {
        if (clearly_greater(value, i.value)) i = {name, step, value, why};
        return;
      }
    worst.push_back({name, step, value, why});
  };
  for (const StepResult& s : steps) {
    for (const BarResult& b : s.bars) look("stress in " + b.name, b.utilisation, s.name);
    for (const auto& [kind, list] : {std::pair{"post ", &s.posts}, std::pair{"cam ", &s.cams},
                                     std::pair{"hinge ", &s.hinges}, std::pair{"screws ", &s.screws}})
      for (const JointResult& j : *list)
        look((j.name.starts_with(kind) ? "" : kind) + j.name, j.utilisation, s.name, governing(j.checks));
  }
  for (const Item& i : worst)
    fail(v, "%s reaches %.2f of what it bears%s in step %s, limit %.2f", i.name.c_str(), i.value,
         i.why.empty() ? "" : (" (" + i.why + ")").c_str(), i.step.c_str(), *limits.utilisation);
}

/// The nose where it opens over the sheet beyond the limit, at its worst station. Judged without [limits], too.
void judge_nose(const Machine& machine, const std::vector<StepResult>& steps, Verdict& v) {
  if (!machine.sheet) return;
  const double limit = nose_opening_limit(machine);
  NoseHold worst;
  const StepResult* at = nullptr;
  for (const StepResult& s : steps)
    if (const NoseHold here = nose_hold(s.bend_line);
        here.opening > limit && (!at || clearly_greater(here.opening, worst.opening))) {
      worst = here;
      at = &s;
    }
  if (at)
    fail(v, "the nose opens by %.3f mm over the sheet in step %s at x = %.4g mm, limit %.3f mm", worst.opening * 1e3,
         at->name.c_str(), worst.opening_x * 1e3, limit * 1e3);
}

} // namespace

Verdict judge(const Machine& machine, const std::vector<StepResult>& steps) {
  Verdict v;
  judge_bow(machine.limits, steps, v);
  judge_angle(machine.limits, steps, v);
  judge_utilisation(machine.limits, steps, v);
  judge_nose(machine, steps, v);
  return v;
}

} // namespace bedbow
