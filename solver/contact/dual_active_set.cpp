#include "solver/contact/dual_active_set.h"

#include <cmath>
#include <limits>

namespace bedbow {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

class Opening {
public:
  Opening(CondensedSprings& rows, const CondensedSystem& system)
      : active_(system.laws.size(), 1)
      , rows_(rows)
      , s_(system) {}

  ContactStatus settle(int most_iterations, ContactSolution& out) {
    if (!rows_.set_active(active_)) {
      const Eigen::MatrixXd loose = rigid_body_modes(s_);
      if (loose.cols() > 0) loose_ = loose.col(0);
      return loose.cols() > 0 ? ContactStatus::mechanism : ContactStatus::no_convergence;
    }
    while (true) {
      now_ = rows_.solve();
      stretch_ = rows_.elongation(now_);
      const Eigen::Index row = worst();
      if (row < 0) return ContactStatus::ok;
      while (active_[static_cast<std::size_t>(row)]) {
        if (out.iterations >= most_iterations) return ContactStatus::no_convergence;
        ++out.iterations;
        if (!open(row, out)) return ContactStatus::mechanism;
      }
    }
  }

  ContactState now_;
  Eigen::VectorXd stretch_;
  std::vector<char> active_;
  Eigen::VectorXd loose_;

private:
  /// +1 where a row is in tension, -1 where it is in compression.
  [[nodiscard]] double sign(Eigen::Index i) const { return s_.laws[i].sense == UnilateralType::tension ? 1 : -1; }

  /// The most violated unilateral row, measured by its own compliance; -1 when none is violated.
  [[nodiscard]] Eigen::Index worst() const {
    const double slack = CondensedSprings::tolerance(stretch_);
    Eigen::Index out = -1;
    double most = 0;
    for (Eigen::Index i = 0; i < stretch_.size(); ++i) {
      if (!active_[i] || s_.laws[i].sense == UnilateralType::both) continue;
      if (sign(i) * (stretch_[i] - s_.laws[i].gap) >= -slack) continue;
      const double wrong = -sign(i) * rows_.scaled_force(now_, i);
      if (wrong > most) {
        most = wrong;
        out = i;
      }
    }
    return out;
  }

  /// One step of opening a row: until its force is zero, or until an open row closes. \return false when neither
  /// happens.
  bool open(Eigen::Index row, ContactSolution& out) {
    const double sense = sign(row);
    ContactState step = rows_.gap_sensitivity(row);
    step.force *= sense;
    step.rigid_amplitudes *= sense;
    const Eigen::VectorXd moved = rows_.elongation(step) - s_.free_elongation;
    // Without the row, do the others restrain every part? If not, equilibrium alone determines its force.
    std::vector<char> rest = active_;
    rest[static_cast<std::size_t>(row)] = 0;
    const bool free = rows_.set_active(rest);
    const double gain = sense * step.force[row];
    const double release = free && gain > 0 ? -sense * now_.force[row] / gain : never;
    Eigen::Index met = -1;
    double reach = never;
    const double least = 1e-9 * moved.cwiseAbs().maxCoeff(); // smaller values are rounding
    for (Eigen::Index i = 0; i < moved.size(); ++i) {
      if (active_[i]) continue;
      const double closing = sign(i) * moved[i];
      if (closing <= least) continue;
      const double at = std::max(0.0, sign(i) * (s_.laws[i].gap - stretch_[i])) / closing;
      if (at < reach) {
        reach = at;
        met = i;
      }
    }
    const double length = std::min(release, reach);
    if (!std::isfinite(length)) {
      const double most = step.rigid_amplitudes.size() ? step.rigid_amplitudes.cwiseAbs().maxCoeff() : 0;
      loose_ = most > 0 ? Eigen::VectorXd(step.rigid_amplitudes / most) : step.rigid_amplitudes;
      return false;
    }
    now_.force += length * step.force;
    now_.rigid_amplitudes += length * step.rigid_amplitudes;
    stretch_ += length * moved;
    if (release <= reach) {
      active_ = std::move(rest); // already active
      now_.force[row] = 0;
    } else {
      active_[static_cast<std::size_t>(met)] = 1;
      rows_.set_active(active_);
    }
    out.history.push_back("iteration " + std::to_string(out.iterations) + ": row " + std::to_string(row) +
                          (release <= reach ? " opened" : " opening until row " + std::to_string(met) + " closed"));
    return true;
  }

  CondensedSprings& rows_;
  const CondensedSystem& s_;
};

} // namespace

void dual_active_set(CondensedSprings& rows, const CondensedSystem& system, int most_iterations, ContactSolution& out) {
  Opening opening(rows, system);
  out.status = opening.settle(most_iterations, out);
  out.mechanism = opening.loose_;
  if (out.status != ContactStatus::ok) return;
  out.force = opening.now_.force;
  out.rigid_amplitudes = opening.now_.rigid_amplitudes;
  out.elongation = opening.stretch_;
  out.active = opening.active_;
}

} // namespace bedbow
