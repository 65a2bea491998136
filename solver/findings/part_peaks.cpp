#include "solver/findings/part_peaks.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

PartPeaks& entry(std::vector<PartPeaks>& all, std::optional<JointKind> kind, const std::string& name) {
  for (PartPeaks& p : all)
    if (p.kind == kind && p.name == name) return p;
  PartPeaks& fresh = all.emplace_back();
  fresh.kind = kind;
  fresh.name = name;
  return fresh;
}

void look_at_bar(const BarResult& b, const std::string& step, PartPeaks& p) {
  p.load.look(b.stress, step, b.at_x);
  p.local.look(b.peak_stress, step, b.peak_x);
  if (p.use.look(b.utilisation, step, b.at_x) && b.utilisation > 0)
    p.check = {"yield", b.stress, {b.stress / b.utilisation, ""}, Quantity::stress, Failure::yields};
}

void look_at_joint(const JointResult& j, const std::string& step, PartPeaks& p) {
  p.load.look(info(j.kind).quantity == Quantity::moment ? j.moment.norm() : j.value, step, j.at.x());
  if (const double across = j.figure("across"); !std::isnan(across)) p.across.look(across, step, j.at.x());
  if (const double thrust = j.figure("thrust"); !std::isnan(thrust)) p.thrust.look(thrust, step, j.at.x());
  if (!p.use.look(j.utilisation, step, j.at.x())) return;
  const Check* governing = worst_check(j.checks);
  p.check = governing ? *governing : Check{};
}

} // namespace

bool Peak::look(double other, const std::string& step_name, double at) {
  if (!step.empty() && !clearly_greater(other, value)) return false;
  *this = {other, step_name, at};
  return true;
}

std::string PartPeaks::label() const {
  return kind ? with_kind(info(*kind).key, name) : "bar " + name;
}

std::vector<PartPeaks> part_peaks(const std::vector<StepResult>& steps) {
  std::vector<PartPeaks> out;
  for (const StepResult& s : steps)
    for (const BarResult& b : s.bars) look_at_bar(b, s.name, entry(out, std::nullopt, b.name));
  for (const JointKindInfo& k : joint_kinds)
    if (k.part)
      for (const StepResult& s : steps)
        for (const JointResult& j : joints_of(s, k.kind)) look_at_joint(j, s.name, entry(out, k.kind, j.name));
  return out;
}

double highest_use(const StepResult& step) {
  double use = 0;
  for (const BarResult& b : step.bars) use = std::fmax(use, b.utilisation);
  for (const JointResult& j : step.joints) use = std::fmax(use, j.utilisation);
  return use;
}

} // namespace bedbow
