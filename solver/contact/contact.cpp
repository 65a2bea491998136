#include "solver/contact/contact.h"

#include "solver/contact/condensed_springs.h"
#include "solver/contact/dual_active_set.h"
#include "solver/linear/dense.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

// Newton's method converges within a few iterations or cycles; then the slower method is used.
constexpr int most_newton_iterations = 60;

/// After this many consecutive iterations with a part that no row restrains and that closes none, Newton's method has
/// failed.
constexpr int most_drifting = 3;

/// Newton's method from the given rows. \return whether it converged, with the solution in `out`; `out.mechanism` is
/// the drift of a part at the end, if any.
bool settle_by_newton(CondensedSprings& rows, const CondensedSystem& system, std::vector<char> active,
                      int most_iterations, ContactSolution& out) {
  const std::size_t m = system.laws.size();
  bool exact = rows.set_active(active);
  ContactState now =
      exact ? rows.solve() : rows.solve_regularised(active, Eigen::VectorXd::Zero(system.rigid_load.size()));
  int drifting = 0;
  while (out.iterations < most_iterations) {
    ++out.iterations;
    const Eigen::VectorXd s = rows.elongation(now);
    const std::vector<char> next = rows.closed(s, active);
    std::size_t changes = 0;
    for (std::size_t i = 0; i < m; ++i) changes += next[i] != active[i];
    if (changes == 0 && exact) {
      out.force = now.force;
      out.rigid_amplitudes = now.rigid_amplitudes;
      out.elongation = s;
      out.active = active;
      return true;
    }
    active = next;
    exact = rows.set_active(active);
    const ContactState candidate = exact ? rows.solve() : rows.solve_regularised(active, now.rigid_amplitudes);
    const Eigen::VectorXd step = candidate.rigid_amplitudes - now.rigid_amplitudes;
    char line[120];
    std::snprintf(line, sizeof line, "iteration %d: %zu rows changed, rigid-body displacement %.3e m%s", out.iterations,
                  changes, step.size() ? step.cwiseAbs().maxCoeff() : 0.0, exact ? "" : " (a part is unrestrained)");
    out.history.emplace_back(line);
    drifting = exact || changes > 0 ? 0 : drifting + 1;
    if (drifting == most_drifting) {
      out.mechanism = step / step.cwiseAbs().maxCoeff();
      return false;
    }
    // A solution consistent with its own rows is the answer; there the slope of the energy is only rounding.
    if (exact && rows.closed(rows.elongation(candidate), active) == active) {
      now = candidate;
      continue;
    }
    const double t = rows.line_search(now, candidate, !exact);
    if (t >= 1) {
      now = candidate;
    } else {
      now.force += t * (candidate.force - now.force);
      now.rigid_amplitudes += t * step;
      exact = false; // between two solutions: check again
    }
  }
  return false;
}

/// Whether a row eventually stops a rigid-body mode.
bool stopped(const CondensedSystem& system, const Eigen::VectorXd& movement) {
  const Eigen::VectorXd moved = system.rigid_elongation * movement;
  const double least = 1e-6 * moved.cwiseAbs().maxCoeff();
  for (Eigen::Index i = 0; i < moved.size(); ++i) {
    const UnilateralType sense = system.laws[i].sense;
    if (std::isfinite(system.laws[i].bound)) continue; // it slides
    const double closing = sense == UnilateralType::both      ? std::abs(moved[i])
                           : sense == UnilateralType::tension ? moved[i]
                                                              : -moved[i];
    if (closing > least) return true;
  }
  return false;
}

} // namespace

ContactSolution solve_contact(const CondensedSystem& system, const std::vector<char>& start, int most_iterations) {
  CondensedSprings rows(system);
  const std::size_t m = system.laws.size();
  std::vector<char> active = start.size() == m ? start : std::vector<char>(m, 1);
  for (std::size_t i = 0; i < m; ++i)
    if (system.laws[i].sense == UnilateralType::both && !std::isfinite(system.laws[i].bound)) active[i] = row_active;
  ContactSolution out;
  if (settle_by_newton(rows, system, std::move(active), std::min(most_newton_iterations, most_iterations), out))
    return out;
  const Eigen::VectorXd drift = std::move(out.mechanism);
  dual_active_set(rows, system, most_iterations, out);
  // The direction of the loads is easier to understand than a rotation about the last active row.
  if (out.status == ContactStatus::mechanism && drift.size() > 0 && !stopped(system, drift)) out.mechanism = drift;
  return out;
}

Eigen::MatrixXd rigid_body_modes(const CondensedSystem& system) {
  const Eigen::Index r = system.rigid_load.size();
  if (r == 0) return Eigen::MatrixXd(0, 0);
  Eigen::MatrixXd b = system.rigid_elongation;
  for (Eigen::Index i = 0; i < b.rows(); ++i) {
    const double n = b.row(i).norm();
    if (n > 0) b.row(i) /= n;
  }
  const Eigen::MatrixXd gram = b.transpose() * b;
  // The norm of the inverse bounds the least eigenvalue, and most machines are far from a mechanism: then the
  // eigenvalues are not needed.
  const Eigen::LDLT<Eigen::MatrixXd> ldlt(gram);
  if (ldlt.vectorD().minCoeff() > 0 && ldlt.solve(Eigen::MatrixXd::Identity(r, r)).norm() < 1e6) return {r, 0};
  const EigenDecomposition eigen = symmetric_eigen(gram);
  Eigen::Index d = 0;
  while (d < r && eigen.values[d] < 1e-12) ++d;
  Eigen::MatrixXd null = eigen.vectors.leftCols(d);
  // Reduced column echelon form: single modes ("slides along x") instead of mixtures.
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
