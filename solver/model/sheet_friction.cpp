#include "solver/model/sheet_friction.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

constexpr double least_relaxation = 0.1, most_relaxation = 2;

bool is_friction(const Model& m, const JointSpring& row) {
  return m.mesh.joints[static_cast<std::size_t>(row.joint)].kind == JointKind::friction;
}

} // namespace

FrictionRounds::FrictionRounds(const Model& m, double coefficient, double grip, const StepSolution& clamped)
    : coefficient_(coefficient) {
  const std::vector<JointSpring>& rows = clamped.rows;
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
  bound_ = bounds_of(clamped);
}

Eigen::VectorXd FrictionRounds::bounds_of(const StepSolution& solved) const {
  Eigen::VectorXd out(static_cast<Eigen::Index>(spots_.size()));
  for (std::size_t i = 0; i < spots_.size(); ++i) {
    double normal = spots_[i].lever;
    for (const Eigen::Index pad : spots_[i].pads) normal -= std::min(solved.force[pad], 0.0);
    out[static_cast<Eigen::Index>(i)] = coefficient_ * std::max(normal, 0.0);
  }
  return out;
}

void FrictionRounds::apply(CondensedSystem& system) const {
  for (std::size_t i = 0; i < spots_.size(); ++i)
    system.laws[static_cast<std::size_t>(spots_[i].row)].bound = bound_[static_cast<Eigen::Index>(i)];
}

bool FrictionRounds::take(const StepSolution& solved) {
  Eigen::VectorXd miss = bounds_of(solved) - bound_;
  if (miss.cwiseAbs().maxCoeff() <= friction_settled_to * bound_.sum()) return true;
  if (rounds_++ > 0) {
    // Aitken: the relaxation that would have met the fixed point, were the miss linear along the last change.
    const Eigen::VectorXd turn = miss - miss_;
    relaxation_ = std::clamp(-relaxation_ * miss_.dot(turn) / turn.squaredNorm(), least_relaxation, most_relaxation);
  }
  bound_ = (bound_ + relaxation_ * miss).cwiseMax(0.0);
  miss_ = std::move(miss);
  return false;
}

Forced without_friction(const Model& m, const std::vector<JointSpring>& rows) {
  Forced out(rows.size());
  for (std::size_t r = 0; r < rows.size(); ++r)
    if (is_friction(m, rows[r])) out[r] = 0;
  return out;
}

} // namespace bedbow
