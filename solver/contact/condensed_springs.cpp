#include "solver/contact/condensed_springs.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

// A rigid row gets this fraction of its own compliance, far below every tolerance, so that two rows that constrain the
// same displacement share its force instead of making the system singular.
constexpr double rigid_share = 1e-12;

/// Whether a row with a bound sticks or slides when it is stretched by `past`. \param slack rounding of a stretch.
char sliding_state(const SpringLaw& law, double past, char state, double slack) {
  if (law.bound == 0) return row_pulled;
  const double most = law.compliance * law.bound; // stretch at which it begins to slide
  if (past >= most + (state == row_pulled ? -slack : slack)) return row_pulled;
  if (past <= -most - (state == row_pushed ? -slack : slack)) return row_pushed;
  return row_active;
}

/// Matrix times vector, without the columns of zeros: of the rows of a nose that turns most do not press.
Eigen::VectorXd product(const Eigen::MatrixXd& matrix, const Eigen::VectorXd& sparse) {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(matrix.rows());
  for (Eigen::Index j = 0; j < sparse.size(); ++j)
    if (sparse[j] != 0) out += sparse[j] * matrix.col(j);
  return out;
}

} // namespace

CondensedSprings::CondensedSprings(const CondensedSystem& system)
    : s_(system)
    , m_(static_cast<Eigen::Index>(system.laws.size())) {
  // Rows in units of their own compliance, so that forces and couples have equal weight.
  Eigen::VectorXd norm = s_.rigid_elongation.rowwise().squaredNorm();
  Eigen::VectorXd own(m_);
  double ratio = 0;
  for (Eigen::Index i = 0; i < m_; ++i) {
    own[i] = s_.compliance(i, i) + s_.laws[i].compliance;
    if (norm[i] > 0) ratio = std::max(ratio, own[i] / norm[i]);
  }
  if (ratio == 0) ratio = 1;
  scale_.resize(m_);
  extra_.resize(m_);
  double weight = 0;
  for (Eigen::Index i = 0; i < m_; ++i) {
    const double d = std::max(own[i], 1e-9 * ratio * norm[i]);
    scale_[i] = d > 0 ? 1 / std::sqrt(d) : 1;
    extra_[i] = s_.laws[i].compliance > 0 ? s_.laws[i].compliance : rigid_share * d;
    weight += norm[i] * scale_[i] * scale_[i];
  }
  gamma_ = weight > 0 ? static_cast<double>(m_) / weight : 1;
  rigid_ = scale_.asDiagonal() * s_.rigid_elongation;
  whole_.resize(m_, m_);
  for (Eigen::Index j = 0; j < m_; ++j) {
    for (Eigen::Index i = j; i < m_; ++i) whole_(i, j) = s_.compliance(i, j) * scale_[i] * scale_[j];
    whole_(j, j) += extra_[j] * scale_[j] * scale_[j];
  }
  if (rigid_.cols() > 0) whole_.selfadjointView<Eigen::Lower>().rankUpdate(rigid_, gamma_);
}

bool CondensedSprings::set_active(const std::vector<char>& active) {
  factor(active);
  if (s_.rigid_load.size() == 0) return true;
  held_ = llt_.matrixL().solve(rows_);
  schur_.compute(held_.transpose() * held_);
  // With the augmentation the greatest eigenvalue is about 1 / gamma; an unrestrained mode gives zero.
  return schur_.vectorD().minCoeff() > 1e-11 / gamma_;
}

ContactState CondensedSprings::solve() const {
  ContactState out = settled(rhs(), load());
  out.force += known_;
  return out;
}

ContactState CondensedSprings::gap_sensitivity(Eigen::Index row) const {
  Eigen::VectorXd h = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(index_.size()));
  const auto at = std::lower_bound(index_.begin(), index_.end(), row) - index_.begin();
  h[at] = scale_[row];
  return settled(std::move(h), Eigen::VectorXd::Zero(s_.rigid_load.size()));
}

ContactState CondensedSprings::solve_regularised(const std::vector<char>& active,
                                                 const Eigen::VectorXd& rigid_amplitudes) {
  factor(active);
  const Eigen::VectorXd on = load();
  const Eigen::VectorXd h = rhs() + rows_ * (rigid_amplitudes + gamma_ * on);
  const Eigen::VectorXd force = llt_.solve(h);
  return {scatter(force) + known_, rigid_amplitudes + gamma_ * (on - rows_.transpose() * force)};
}

ContactState CondensedSprings::settled(Eigen::VectorXd h, const Eigen::VectorXd& load) const {
  if (load.size() == 0) return {scatter(llt_.solve(h)), load};
  h += gamma_ * (rows_ * load);
  llt_.matrixL().solveInPlace(h);
  Eigen::VectorXd rigid_amplitudes = schur_.solve(load - held_.transpose() * h);
  Eigen::VectorXd force = llt_.matrixU().solve(h + held_ * rigid_amplitudes);
  // One step of refinement of the equilibrium of the parts, which the certificate checks.
  const Eigen::VectorXd miss = load - rows_.transpose() * force;
  const Eigen::VectorXd more = schur_.solve(miss);
  rigid_amplitudes += more;
  force += llt_.matrixU().solve(held_ * more);
  return {scatter(force), std::move(rigid_amplitudes)};
}

Eigen::VectorXd CondensedSprings::elongation(const ContactState& x) const {
  return s_.free_elongation - product(s_.compliance, x.force) + s_.rigid_elongation * x.rigid_amplitudes;
}

double CondensedSprings::tolerance(const Eigen::VectorXd& elongation) {
  return 1e-12 * (elongation.size() ? elongation.cwiseAbs().maxCoeff() : 0);
}

std::vector<char> CondensedSprings::closed(const Eigen::VectorXd& elongation, const std::vector<char>& active) const {
  const double least = tolerance(elongation);
  std::vector<char> out(active.size(), 1);
  for (std::size_t i = 0; i < active.size(); ++i) {
    const SpringLaw& law = s_.laws[i];
    const double past = elongation[static_cast<Eigen::Index>(i)] - law.gap;
    if (law.sense == UnilateralType::both) {
      if (std::isfinite(law.bound)) out[i] = sliding_state(law, past, active[i], least);
      continue;
    }
    const double over = law.sense == UnilateralType::tension ? past : -past;
    out[i] = active[i] ? over >= -least : over > least;
  }
  return out;
}

double CondensedSprings::line_search(const ContactState& a, const ContactState& b, bool tied) const {
  const Eigen::VectorXd sa = elongation(a);
  const Eigen::VectorXd ds = elongation(b) - sa;
  const Eigen::VectorXd df = b.force - a.force;
  const Eigen::VectorXd da = b.rigid_amplitudes - a.rigid_amplitudes;
  const Eigen::VectorXd cdf = product(s_.compliance, df);
  const double slope0 = a.force.dot(cdf) - s_.rigid_load.dot(da);
  const double slope1 = df.dot(cdf) + (tied ? da.squaredNorm() / gamma_ : 0.0);
  const auto derivative = [&](double t) {
    double v = slope0 + t * slope1;
    for (Eigen::Index i = 0; i < m_; ++i) {
      const SpringLaw& law = s_.laws[i];
      if (law.compliance == 0) continue; // rigid rows do not stretch between two states that both satisfy them
      double over = sa[i] + t * ds[i] - law.gap;
      if (law.sense == UnilateralType::tension) over = std::max(over, 0.0);
      if (law.sense == UnilateralType::compression) over = std::min(over, 0.0);
      v += std::clamp(over / law.compliance, -law.bound, law.bound) * ds[i];
    }
    return v;
  };
  if (derivative(1) <= 0) return 1;
  double lower = 0;
  double upper = 1;
  for (int i = 0; i < 60; ++i) { // monotone and piecewise linear: bisection is accurate enough and never fails
    const double t = (lower + upper) / 2;
    (derivative(t) > 0 ? upper : lower) = t;
  }
  return lower;
}

void CondensedSprings::factor(const std::vector<char>& active) {
  index_.clear();
  known_ = Eigen::VectorXd::Zero(m_);
  for (Eigen::Index i = 0; i < m_; ++i) {
    if (active[i] == row_active) index_.push_back(i);
    if (active[i] == row_pulled) known_[i] = s_.laws[i].bound;
    if (active[i] == row_pushed) known_[i] = -s_.laws[i].bound;
  }
  const auto n = static_cast<Eigen::Index>(index_.size());
  rows_.resize(n, rigid_.cols());
  for (Eigen::Index c = 0; c < rigid_.cols(); ++c)
    for (Eigen::Index i = 0; i < n; ++i) rows_(i, c) = rigid_(index_[i], c);
  Eigen::MatrixXd a(n, n);
  for (Eigen::Index j = 0; j < n; ++j)
    for (Eigen::Index i = j; i < n; ++i) a(i, j) = whole_(index_[i], index_[j]);
  llt_.compute(a);
}

Eigen::VectorXd CondensedSprings::load() const {
  return s_.rigid_load - s_.rigid_elongation.transpose() * known_;
}

Eigen::VectorXd CondensedSprings::rhs() const {
  const Eigen::VectorXd free = s_.free_elongation - product(s_.compliance, known_);
  Eigen::VectorXd h(static_cast<Eigen::Index>(index_.size()));
  for (std::size_t i = 0; i < index_.size(); ++i)
    h[static_cast<Eigen::Index>(i)] = (free[index_[i]] - s_.laws[index_[i]].gap) * scale_[index_[i]];
  return h;
}

Eigen::VectorXd CondensedSprings::scatter(const Eigen::VectorXd& scaled) const {
  Eigen::VectorXd force = Eigen::VectorXd::Zero(m_);
  for (std::size_t i = 0; i < index_.size(); ++i)
    force[index_[i]] = scaled[static_cast<Eigen::Index>(i)] * scale_[index_[i]];
  return force;
}

} // namespace bedbow
