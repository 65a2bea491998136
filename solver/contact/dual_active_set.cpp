#include "solver/contact/dual_active_set.h"

#include <cmath>
#include <limits>
#include <utility>

namespace bedbow {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

/// A row that is being released: its force goes towards `target`, rising where `sense` is +1; there it gets a new
/// state.
struct Release {
  double sense = 0, target = 0;
  char state = row_open;
};

class Opening {
public:
  Opening(CondensedSprings& rows, const CondensedSystem& system)
      : active_(system.laws.size(), row_active)
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
      while (active_[static_cast<std::size_t>(row)] == row_active) {
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

  /// What an active row is released to: no force, or the bound that its force exceeds.
  [[nodiscard]] Release release_of(Eigen::Index i) const {
    if (s_.laws[i].sense != UnilateralType::both) return {sign(i), 0, row_open};
    return now_.force[i] > 0 ? Release{-1, s_.laws[i].bound, row_pulled} : Release{1, -s_.laws[i].bound, row_pushed};
  }

  /// Part of an active row's force that it cannot carry [N or N m]; not positive where it can carry all.
  [[nodiscard]] double excess(Eigen::Index i, double slack) const {
    const SpringLaw& law = s_.laws[i];
    const double past = stretch_[i] - law.gap;
    if (law.sense != UnilateralType::both) return sign(i) * past >= -slack ? 0 : -sign(i) * now_.force[i];
    if (!std::isfinite(law.bound) || std::abs(past) <= law.compliance * law.bound + slack) return 0;
    return std::abs(now_.force[i]) - law.bound;
  }

  /// Distance of a row that is not active from where it becomes active again, and the direction of its stretch there.
  [[nodiscard]] std::pair<double, double> way_back(Eigen::Index i) const {
    const SpringLaw& law = s_.laws[i];
    const double past = stretch_[i] - law.gap, slides = law.compliance * law.bound;
    if (active_[i] == row_pulled) return {past - slides, -1};
    if (active_[i] == row_pushed) return {-slides - past, 1};
    return {-sign(i) * past, sign(i)};
  }

  /// The row with the greatest excess, measured by its own compliance; -1 when there is none.
  [[nodiscard]] Eigen::Index worst() const {
    const double slack = CondensedSprings::tolerance(stretch_);
    Eigen::Index out = -1;
    double most = 0;
    for (Eigen::Index i = 0; i < stretch_.size(); ++i) {
      if (active_[i] != row_active) continue;
      const double wrong = rows_.scaled(excess(i, slack), i);
      if (wrong > most) {
        most = wrong;
        out = i;
      }
    }
    return out;
  }

  /// One step of releasing a row: until its force is what it can carry, or until an open row closes or a sliding one
  /// sticks. \return false when none of that happens.
  bool open(Eigen::Index row, ContactSolution& out) {
    const Release to = release_of(row);
    ContactState step = rows_.gap_sensitivity(row);
    step.force *= to.sense;
    step.rigid_amplitudes *= to.sense;
    const Eigen::VectorXd moved = rows_.elongation(step) - s_.free_elongation;
    // Without the row, do the others restrain every part? If not, equilibrium alone determines its force.
    std::vector<char> rest = active_;
    rest[static_cast<std::size_t>(row)] = to.state;
    const bool free = rows_.set_active(rest);
    const double gain = to.sense * step.force[row];
    const double release = free && gain > 0 ? to.sense * (to.target - now_.force[row]) / gain : never;
    Eigen::Index met = -1;
    double reach = never;
    const double least = 1e-9 * moved.cwiseAbs().maxCoeff(); // smaller values are rounding
    for (Eigen::Index i = 0; i < moved.size(); ++i) {
      if (active_[i] == row_active) continue;
      const auto [distance, direction] = way_back(i);
      const double closing = direction * moved[i];
      if (closing <= least) continue;
      const double at = std::max(0.0, distance) / closing;
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
      now_.force[row] = to.target;
    } else {
      active_[static_cast<std::size_t>(met)] = row_active;
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
