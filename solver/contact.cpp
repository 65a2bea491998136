#include "solver/contact.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

// A rigid row is given this share of its own compliance, far below every tolerance, so that two rows that hold the same
// movement share its force instead of making the system singular.
constexpr double rigid_share = 1e-12;

struct State {
  Eigen::VectorXd force, alpha; ///< force has zeros at rows that do not carry
};

class Solver {
public:
  explicit Solver(const CondensedSystem& s)
      : s_(s)
      , m_(static_cast<Eigen::Index>(s.laws.size())) {
    // Rows in units of their own compliance, so that forces and couples weigh alike.
    Eigen::VectorXd norm = s.rigid_stretch.rowwise().squaredNorm();
    Eigen::VectorXd own(m_);
    double ratio = 0;
    for (Eigen::Index i = 0; i < m_; ++i) {
      own[i] = s.compliance(i, i) + s.laws[i].compliance;
      if (norm[i] > 0) ratio = std::max(ratio, own[i] / norm[i]);
    }
    if (ratio == 0) ratio = 1;
    scale_.resize(m_);
    extra_.resize(m_);
    double weight = 0;
    for (Eigen::Index i = 0; i < m_; ++i) {
      const double d = std::max(own[i], 1e-9 * ratio * norm[i]);
      scale_[i] = d > 0 ? 1 / std::sqrt(d) : 1;
      extra_[i] = s.laws[i].compliance > 0 ? s.laws[i].compliance : rigid_share * d;
      weight += norm[i] * scale_[i] * scale_[i];
    }
    gamma_ = weight > 0 ? static_cast<double>(m_) / weight : 1;
  }

  /// Forces and rigid movements with just the active rows. \return false when the rigid movements are not held.
  bool solve(const std::vector<char>& active, State& out) {
    factor(active);
    const Eigen::Index r = s_.rigid_load.size();
    Eigen::VectorXd h = rhs();
    Eigen::VectorXd force;
    if (r == 0) {
      force = llt_.solve(h);
      out.alpha.resize(0);
    } else {
      h += gamma_ * (rows_ * s_.rigid_load);
      const Eigen::MatrixXd x = llt_.solve(rows_);
      const Eigen::MatrixXd schur = rows_.transpose() * x;
      Eigen::LDLT<Eigen::MatrixXd> ldlt(schur);
      const Eigen::VectorXd d = ldlt.vectorD();
      // With the augmentation the greatest eigenvalue is about 1 / gamma; a movement that no row holds gives zero.
      if (!(d.minCoeff() > 1e-11 / gamma_)) return false;
      const Eigen::VectorXd y = llt_.solve(h);
      out.alpha = ldlt.solve(s_.rigid_load - rows_.transpose() * y);
      force = y + x * out.alpha;
      // One step of refinement on the equilibrium of the parts, which is what the certificate looks at.
      const Eigen::VectorXd miss = s_.rigid_load - rows_.transpose() * force;
      const Eigen::VectorXd more = ldlt.solve(miss);
      out.alpha += more;
      force += x * more;
    }
    spread(force, out.force);
    return true;
  }

  /// The same with the rigid movements tied to where they are by soft springs: always solvable.
  void solve_near(const std::vector<char>& active, const Eigen::VectorXd& alpha, State& out) {
    factor(active);
    const Eigen::VectorXd h = rhs() + rows_ * (alpha + gamma_ * s_.rigid_load);
    const Eigen::VectorXd force = llt_.solve(h);
    out.alpha = alpha + gamma_ * (s_.rigid_load - rows_.transpose() * force);
    spread(force, out.force);
  }

  [[nodiscard]] Eigen::VectorXd stretch(const State& x) const {
    return s_.free_stretch - s_.compliance * x.force + s_.rigid_stretch * x.alpha;
  }

  [[nodiscard]] bool closed(Eigen::Index i, double stretch, bool now, double slack) const {
    const RowLaw& law = s_.laws[i];
    if (law.sense == Sense::both) return true;
    const double over = law.sense == Sense::tension ? stretch - law.gap : law.gap - stretch;
    return now ? over >= -slack : over > slack;
  }

  /// Step from a to b that makes the energy least. \param held the rigid movements were tied (solve_near).
  [[nodiscard]] double line_search(const State& a, const State& b, bool held) const {
    const Eigen::VectorXd sa = stretch(a);
    const Eigen::VectorXd ds = stretch(b) - sa;
    const Eigen::VectorXd df = b.force - a.force;
    const Eigen::VectorXd da = b.alpha - a.alpha;
    const Eigen::VectorXd cdf = s_.compliance * df;
    const double slope0 = a.force.dot(cdf) - s_.rigid_load.dot(da);
    const double slope1 = df.dot(cdf) + (held ? da.squaredNorm() / gamma_ : 0.0);
    const auto derivative = [&](double t) {
      double v = slope0 + t * slope1;
      for (Eigen::Index i = 0; i < m_; ++i) {
        const RowLaw& law = s_.laws[i];
        if (law.compliance == 0) continue; // rigid rows do not stretch between two states that both obey them
        double over = sa[i] + t * ds[i] - law.gap;
        if (law.sense == Sense::tension) over = std::max(over, 0.0);
        if (law.sense == Sense::compression) over = std::min(over, 0.0);
        v += over / law.compliance * ds[i];
      }
      return v;
    };
    if (derivative(1) <= 0) return 1;
    double lower = 0;
    double upper = 1;
    for (int i = 0; i < 60; ++i) { // monotone and piecewise linear: halving is exact enough and never fails
      const double t = (lower + upper) / 2;
      (derivative(t) > 0 ? upper : lower) = t;
    }
    return lower;
  }

private:
  void factor(const std::vector<char>& active) {
    index_.clear();
    for (Eigen::Index i = 0; i < m_; ++i)
      if (active[i]) index_.push_back(i);
    const auto n = static_cast<Eigen::Index>(index_.size());
    const Eigen::Index r = s_.rigid_load.size();
    rows_.resize(n, r);
    Eigen::MatrixXd a(n, n);
    for (Eigen::Index j = 0; j < n; ++j) {
      rows_.row(j) = s_.rigid_stretch.row(index_[j]) * scale_[index_[j]];
      for (Eigen::Index i = j; i < n; ++i)
        a(i, j) = s_.compliance(index_[i], index_[j]) * scale_[index_[i]] * scale_[index_[j]];
      a(j, j) += extra_[index_[j]] * scale_[index_[j]] * scale_[index_[j]];
    }
    if (r > 0) a.selfadjointView<Eigen::Lower>().rankUpdate(rows_, gamma_);
    llt_.compute(a);
  }

  [[nodiscard]] Eigen::VectorXd rhs() const {
    Eigen::VectorXd h(static_cast<Eigen::Index>(index_.size()));
    for (std::size_t i = 0; i < index_.size(); ++i)
      h[static_cast<Eigen::Index>(i)] = (s_.free_stretch[index_[i]] - s_.laws[index_[i]].gap) * scale_[index_[i]];
    return h;
  }

  void spread(const Eigen::VectorXd& scaled, Eigen::VectorXd& force) const {
    force = Eigen::VectorXd::Zero(m_);
    for (std::size_t i = 0; i < index_.size(); ++i)
      force[index_[i]] = scaled[static_cast<Eigen::Index>(i)] * scale_[index_[i]];
  }

  const CondensedSystem& s_;
  Eigen::Index m_;
  Eigen::VectorXd scale_, extra_;
  double gamma_ = 1;
  std::vector<Eigen::Index> index_;
  Eigen::MatrixXd rows_;
  Eigen::LLT<Eigen::MatrixXd> llt_;
};

/// Rows that given stretches close. \param active those closed so far, which rounding alone does not open.
std::vector<char> closed_rows(const Solver& solver, const Eigen::VectorXd& stretch, const std::vector<char>& active) {
  const double slack = 1e-12 * (stretch.size() ? stretch.cwiseAbs().maxCoeff() : 0);
  std::vector<char> closed(active.size());
  for (std::size_t i = 0; i < active.size(); ++i) {
    const auto row = static_cast<Eigen::Index>(i);
    closed[i] = solver.closed(row, stretch[row], active[i] != 0, slack);
  }
  return closed;
}

} // namespace

ContactSolution solve_contact(const CondensedSystem& system, const std::vector<char>& start, int most_iterations) {
  Solver solver(system);
  const std::size_t m = system.laws.size();
  std::vector<char> active = start.size() == m ? start : std::vector<char>(m, 1);
  for (std::size_t i = 0; i < m; ++i)
    if (system.laws[i].sense == Sense::both) active[i] = 1;
  ContactSolution out;
  State now;
  bool exact = solver.solve(active, now);
  if (!exact) solver.solve_near(active, Eigen::VectorXd::Zero(system.rigid_load.size()), now);
  for (out.iterations = 1; out.iterations <= most_iterations; ++out.iterations) {
    const Eigen::VectorXd s = solver.stretch(now);
    const std::vector<char> next = closed_rows(solver, s, active);
    std::size_t changes = 0;
    for (std::size_t i = 0; i < m; ++i) changes += next[i] != active[i];
    if (changes == 0 && exact) {
      out.force = now.force;
      out.alpha = now.alpha;
      out.stretch = s;
      out.active = active;
      return out;
    }
    active = next;
    State candidate;
    exact = solver.solve(active, candidate);
    if (!exact) solver.solve_near(active, now.alpha, candidate);
    const Eigen::VectorXd step = candidate.alpha - now.alpha;
    char line[120];
    std::snprintf(line, sizeof line, "iteration %d: %zu rows changed, rigid movement %.3e m%s", out.iterations, changes,
                  step.size() ? step.cwiseAbs().maxCoeff() : 0.0, exact ? "" : " (a part is not held)");
    out.history.emplace_back(line);
    const double far = candidate.alpha.size() ? candidate.alpha.cwiseAbs().maxCoeff() : 0;
    if (!exact && (far > 10 || (changes == 0 && out.iterations > 20))) { // metres: the part has gone
      out.status = ContactStatus::loose;
      out.loose = step.cwiseAbs().maxCoeff() > 0 ? Eigen::VectorXd(step / step.cwiseAbs().maxCoeff()) : step;
      return out;
    }
    // A solution that agrees with its own rows is the answer; on it the energy's slope is nothing but rounding.
    if (exact && closed_rows(solver, solver.stretch(candidate), active) == active) {
      now = candidate;
      continue;
    }
    const double t = solver.line_search(now, candidate, !exact);
    if (t >= 1) {
      now = candidate;
    } else {
      now.force += t * (candidate.force - now.force);
      now.alpha += t * step;
      exact = false; // between two solutions: look again
    }
  }
  out.status = ContactStatus::no_convergence;
  out.iterations = most_iterations;
  return out;
}

Eigen::MatrixXd loose_movements(const CondensedSystem& system) {
  const Eigen::Index r = system.rigid_load.size();
  if (r == 0) return Eigen::MatrixXd(0, 0);
  Eigen::MatrixXd b = system.rigid_stretch;
  for (Eigen::Index i = 0; i < b.rows(); ++i) {
    const double n = b.row(i).norm();
    if (n > 0) b.row(i) /= n;
  }
  Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(b.transpose() * b);
  Eigen::Index d = 0;
  while (d < r && eigen.eigenvalues()[d] < 1e-12) ++d;
  Eigen::MatrixXd null = eigen.eigenvectors().leftCols(d);
  // Reduced column echelon form: single movements ("slides along x") instead of mixtures.
  std::vector<char> used(static_cast<std::size_t>(r), 0);
  for (Eigen::Index c = 0; c < d; ++c) {
    Eigen::Index pivot = -1;
    for (Eigen::Index i = 0; i < r; ++i)
      if (!used[i] && (pivot < 0 || std::abs(null(i, c)) > std::abs(null(pivot, c)))) pivot = i;
    used[pivot] = 1;
    null.col(c) /= null(pivot, c);
    for (Eigen::Index o = 0; o < d; ++o)
      if (o != c) null.col(o) -= null.col(c) * null(pivot, o);
  }
  for (Eigen::Index c = 0; c < d; ++c)
    null.col(c) = null.col(c).unaryExpr([](double v) { return std::abs(v) < 1e-6 ? 0.0 : v; });
  return null;
}

} // namespace bedbow
