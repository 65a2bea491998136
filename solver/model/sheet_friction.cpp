#include "solver/model/sheet_friction.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

constexpr double settled_to = 1e-8; // of the sum of the bounds
constexpr double rounding = 1e-9;   // of a bound
constexpr int most_patience = 3;    // blocks that make no fewer wrong
constexpr int most_solutions = 400;

bool is_friction(const Model& m, const JointSpring& row) {
  return m.mesh.joints[static_cast<std::size_t>(row.joint)].kind == JointKind::friction;
}

} // namespace

FrictionRounds::FrictionRounds(const Model& m, const std::vector<JointSpring>& rows, double coefficient, double grip)
    : coefficient_(coefficient)
    , rows_(rows.size()) {
  const auto joint = [&](std::size_t row) -> const Joint& {
    return m.mesh.joints[static_cast<std::size_t>(rows[row].joint)];
  };
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (!is_friction(m, rows[r])) continue;
    Spot& s = spots_.emplace_back();
    s.row = static_cast<Eigen::Index>(r);
    s.lever = grip * joint(r).tributary;
    for (std::size_t p = 0; p < rows.size(); ++p)
      if (joint(p).kind == JointKind::pad && joint(p).index == joint(r).index)
        s.pads.push_back(static_cast<Eigen::Index>(p));
  }
}

Forced FrictionRounds::forced() const {
  Forced out(rows_);
  for (const Spot& s : spots_) out[static_cast<std::size_t>(s.row)] = s.slide;
  return out;
}

bool FrictionRounds::bounds_settled(const StepSolution& solved) {
  double change = 0, sum = 0;
  for (Spot& s : spots_) {
    double normal = s.lever;
    for (const Eigen::Index pad : s.pads) normal -= std::min(solved.force[pad], 0.0);
    const double bound = coefficient_ * std::max(normal, 0.0);
    change = std::max(change, std::abs(bound - s.bound));
    sum += bound;
    s.bound = bound;
    if (s.slide) s.slide = std::copysign(bound, *s.slide);
  }
  const bool first = rounds_++ == 0;
  return !first && change <= settled_to * sum;
}

std::vector<std::size_t> FrictionRounds::wrong(const StepSolution& solved) const {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < spots_.size(); ++i) {
    const Spot& s = spots_[i];
    const JointSpring& row = solved.rows[static_cast<std::size_t>(s.row)];
    // Of a spot that slides: what its spring would take if it stuck where it lies now, along its friction.
    const bool bad = s.slide ? (solved.elongation[s.row] - row.gap) / row.compliance * std::copysign(1.0, *s.slide) <
                                   s.bound * (1 - rounding)
                             : std::abs(solved.force[s.row]) > s.bound * (1 + rounding);
    if (bad) out.push_back(i);
  }
  return out;
}

bool FrictionRounds::take(const StepSolution& solved) {
  ++solutions_;
  if (rounds_ == 0) bounds_settled(solved);
  std::vector<std::size_t> flip = wrong(solved);
  if (flip.empty()) {
    best_ = spots_.size() + 1;
    return bounds_settled(solved);
  }
  // Block principal pivoting: all that are wrong at once while that makes them fewer, else the last of them alone.
  if (flip.size() < best_) {
    best_ = flip.size();
    patience_ = most_patience;
  } else if (patience_ > 0) {
    --patience_;
  } else {
    flip = {flip.back()};
  }
  for (const std::size_t i : flip) {
    Spot& s = spots_[i];
    s.slide = s.slide ? std::nullopt : std::optional(std::copysign(s.bound, solved.force[s.row]));
  }
  return false;
}

bool FrictionRounds::exhausted() const {
  return rounds_ > most_friction_rounds || solutions_ > most_solutions;
}

Forced without_friction(const Model& m, const std::vector<JointSpring>& rows) {
  Forced out(rows.size());
  for (std::size_t r = 0; r < rows.size(); ++r)
    if (is_friction(m, rows[r])) out[r] = 0;
  return out;
}

} // namespace bedbow
