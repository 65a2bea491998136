#include "solver/findings/part_peaks.h"

#include <algorithm>

namespace bedbow {

namespace {

PartPeaks& entry(std::vector<PartPeaks>& all, const std::string& kind, const std::string& name) {
  for (PartPeaks& p : all)
    if (p.kind == kind && p.name == name) return p;
  PartPeaks& fresh = all.emplace_back();
  fresh.kind = kind;
  fresh.name = name;
  return fresh;
}

void look_at_bar(const BarResult& b, const std::string& step, PartPeaks& p) {
  p.load.look(b.stress, step, b.at_x);
  if (p.use.look(b.utilisation, step, b.at_x) && b.utilisation > 0)
    p.check = {"yield", b.stress, {b.stress / b.utilisation, ""}, CheckUnit::stress, Failure::yields};
}

void look_at_joint(const JointResult& j, bool turns, const std::string& step, PartPeaks& p) {
  p.load.look(turns ? j.moment.norm() : j.value, step, j.at.x());
  if (const auto across = j.more.find("across_N"); across != j.more.end())
    p.across.look(across->second, step, j.at.x());
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

std::string with_kind(const std::string& kind, const std::string& name) {
  return name.starts_with(kind) ? name : kind + " " + name;
}

std::string PartPeaks::label() const {
  return kind == "bar" ? "bar " + name : with_kind(kind, name);
}

std::vector<PartPeaks> part_peaks(const std::vector<StepResult>& steps) {
  std::vector<PartPeaks> out;
  for (const StepResult& s : steps)
    for (const BarResult& b : s.bars) look_at_bar(b, s.name, entry(out, "bar", b.name));
  for (const JointList& l : joint_lists)
    for (const StepResult& s : steps)
      for (const JointResult& j : s.*l.list)
        look_at_joint(j, l.list == &StepResult::handles, s.name, entry(out, l.kind, j.name));
  return out;
}

} // namespace bedbow
