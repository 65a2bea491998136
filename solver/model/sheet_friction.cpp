#include "solver/model/sheet_friction.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

constexpr double settled_to = 1e-8; // of the sum of the bounds

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

bool FrictionRounds::take(const StepSolution& solved) {
  bool settled = true;
  double change = 0, sum = 0;
  for (Spot& s : spots_) {
    double normal = s.lever;
    for (const Eigen::Index pad : s.pads) normal -= std::min(solved.force[pad], 0.0);
    const double bound = coefficient_ * std::max(normal, 0.0);
    const JointSpring& row = solved.rows[static_cast<std::size_t>(s.row)];
    // Of a spot that sticks this is its force; of one that slides what its spring would take if it stuck from now on
    // where it lies.
    const double wanted = s.slide ? (solved.elongation[s.row] - row.gap) / row.compliance : solved.force[s.row];
    const bool slides = std::abs(wanted) > bound;
    const double force = slides ? std::copysign(bound, wanted) : wanted;
    sum += bound;
    if (slides != s.slide.has_value()) {
      // Rounding alone at the bound is no change.
      if (std::abs(std::abs(wanted) - bound) > settled_to * (bound + std::abs(wanted))) settled = false;
    } else if (s.slide) {
      change = std::max(change, std::abs(force - *s.slide));
    }
    s.slide = slides ? std::optional(force) : std::nullopt;
  }
  return settled && change <= settled_to * sum;
}

Forced without_friction(const Model& m, const std::vector<JointSpring>& rows) {
  Forced out(rows.size());
  for (std::size_t r = 0; r < rows.size(); ++r)
    if (is_friction(m, rows[r])) out[r] = 0;
  return out;
}

} // namespace bedbow
