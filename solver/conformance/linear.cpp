// Requirements of a linear solver.
#include "solver/conformance/conformance.h"
#include "solver/linear/dense.h"

#include <Eigen/Core>

#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <numbers>
#include <stdexcept>
#include <thread>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int across = 23, along = 17; // of the grid
constexpr double backward = 1e-13;     // stable solvers leave a few eps
// Without pivoting the entries of an indefinite matrix may grow much more in the factorization.
constexpr double backward_indefinite = 1e-9;

SymmetricMatrix from(int n, const std::vector<Eigen::Triplet<double>>& entries) {
  SymmetricMatrix out(n, n);
  out.setFromTriplets(entries.begin(), entries.end());
  out.makeCompressed();
  return out;
}

/// Five-point differences on a grid, less a shift. Eigenvalues 4 - 2 cos(i pi / (m + 1)) - 2 cos(j pi / (n + 1)).
SymmetricMatrix grid(double shift) {
  std::vector<Eigen::Triplet<double>> e;
  for (int j = 0; j < along; ++j)
    for (int i = 0; i < across; ++i) {
      const int k = j * across + i;
      e.emplace_back(k, k, 4 - shift);
      if (i + 1 < across) e.emplace_back(k + 1, k, -1);
      if (j + 1 < along) e.emplace_back(k + across, k, -1);
    }
  return from(across * along, e);
}

int below_zero(double shift) {
  using std::numbers::pi;
  int count = 0;
  for (int i = 1; i <= across; ++i)
    for (int j = 1; j <= along; ++j)
      count += 4 - 2 * std::cos(i * pi / (across + 1)) - 2 * std::cos(j * pi / (along + 1)) < shift;
  return count;
}

/// A clamped beam of 2-dof nodes, stations in order: stiffness 12, 6, 4, 2 of unit length. The last node's rotation has
/// no stiffness where `mechanism`.
SymmetricMatrix ladder(int nodes, bool loose) {
  const int n = 2 * nodes + (loose ? 1 : 0);
  MatrixXd K = MatrixXd::Zero(n, n);
  Eigen::Matrix4d k;
  k << 12, 6, -12, 6, 6, 4, -6, 2, -12, -6, 12, -6, 6, 2, -6, 4;
  K.topLeftCorner<2, 2>() += k.bottomRightCorner<2, 2>(); // to ground
  for (int i = 0; i + 1 < nodes; ++i) K.block<4, 4>(2 * i, 2 * i) += k;
  std::vector<Eigen::Triplet<double>> e;
  for (int j = 0; j < n; ++j)
    for (int i = j; i < n; ++i)
      if (i == j || K(i, j) != 0) e.emplace_back(i, j, K(i, j));
  return from(n, e);
}

MatrixXd times(const SymmetricMatrix& a, const MatrixXd& x) {
  return a.selfadjointView<Eigen::Lower>() * x;
}

MatrixXd right_sides(Index n, Index count) {
  MatrixXd b(n, count);
  for (Index j = 0; j < count; ++j)
    for (Index i = 0; i < n; ++i) b(i, j) = std::sin(1.0 + 0.37 * static_cast<double>(i * (j + 2)));
  return b;
}

/// |A X - B| / (|A| |X| + |B|), greatest entries.
double residual(const SymmetricMatrix& a, const MatrixXd& x, const MatrixXd& b) {
  const double norm = MatrixXd(a).cwiseAbs().maxCoeff();
  return (times(a, x) - b).cwiseAbs().maxCoeff() / (norm * x.cwiseAbs().maxCoeff() + b.cwiseAbs().maxCoeff());
}

std::unique_ptr<Factorization> factor(const LinearSolverEntry& s, const SymmetricMatrix& a, const FactorHints& hints) {
  FactorOutcome outcome = s.factor(a, hints);
  if (!outcome.factorization)
    throw std::runtime_error("refuses a matrix that is regular, at unknown " + std::to_string(outcome.zero_pivot));
  return std::move(outcome.factorization);
}

void check_solving(const LinearSolverEntry& s, Conformance& out) {
  struct Sample {
    const char* what;
    SymmetricMatrix a;
    FactorHints hints;
  };
  const std::array<Sample, 3> samples{
      {{"grid, positive definite: residual", grid(0), {}},
       {"ladder, station by station: residual", ladder(200, false), {2, true, true, 0}},
       {"grid, shifted among its eigenvalues: residual", grid(0.7), {1, false, false, 0}}}};
  for (const auto& [what, a, hints] : samples) {
    const auto f = factor(s, a, hints);
    const MatrixXd b = right_sides(a.rows(), 5);
    MatrixXd x = b;
    f->solve(x);
    out.at_most(what, residual(a, x, b), hints.positive ? backward : backward_indefinite);
    MatrixXd one = b.col(3);
    f->solve(one);
    const double apart = (one - x.col(3)).cwiseAbs().maxCoeff() / x.col(3).cwiseAbs().maxCoeff();
    // The ladder's condition number of 4e9 magnifies rounding.
    if (hints.positive && !hints.banded_order) out.at_most("several right-hand sides as one by one", apart, 1e-12);
  }
}

void check_compliance(const LinearSolverEntry& s, Conformance& out) {
  const SymmetricMatrix a = grid(0);
  const auto f = factor(s, a, {});
  Eigen::SparseMatrix<double> p(a.rows(), 4);
  for (int j = 0; j < 4; ++j)
    for (int k = 0; k < 3; ++k) p.insert(40 * j + 7 * k, j) = 1.0 + j - k;
  const MatrixXd due =
      MatrixXd(p).transpose() * solve_dense(times(grid(0), MatrixXd::Identity(a.rows(), a.rows())), MatrixXd(p));
  const MatrixXd c = f->compliance(p);
  out.at_most("compliance of four rows against a dense solution", (c - due).norm() / due.norm(), 1e-12);
  out.at_most("compliance exactly symmetric", (c - c.transpose()).norm(), 0);
}

void check_pivots(const LinearSolverEntry& s, Conformance& out) {
  const double shift = 0.7;
  const auto f = factor(s, grid(shift), {1, false, false, 0});
  try {
    out.at_most("negative pivots against eigenvalues in closed form",
                std::abs(f->negative_pivots() - below_zero(shift)), 0);
  } catch (const std::logic_error& e) { // the method can't determine it
    out.checks.push_back({"negative pivots", 0, 0, true, e.what()});
  }
}

void check_refusal(const LinearSolverEntry& s, Conformance& out) {
  const SymmetricMatrix a = ladder(20, true);
  const FactorOutcome outcome = s.factor(a, {1, true, true, 0});
  const bool named = !outcome.factorization && outcome.zero_pivot == static_cast<int>(a.rows()) - 1;
  out.at_most("an unknown without stiffness is refused by its number", named ? 0 : 1, 0,
              outcome.factorization ? "accepted a singular matrix" : "");
}

void check_threads(const LinearSolverEntry& s, Conformance& out) {
  const SymmetricMatrix a = grid(0);
  const auto f = factor(s, a, {});
  const MatrixXd b = right_sides(a.rows(), 3);
  std::array<MatrixXd, 4> x{b, b, b, b};
  std::array<std::exception_ptr, 4> trouble{};
  {
    std::vector<std::jthread> pool;
    for (std::size_t t = 0; t < x.size(); ++t)
      pool.emplace_back([&, t] {
        try {
          for (int again = 0; again < 20; ++again) {
            x[t] = b;
            f->solve(x[t]);
          }
        } catch (...) {
          trouble[t] = std::current_exception();
        }
      });
  }
  for (const std::exception_ptr& e : trouble)
    if (e) std::rethrow_exception(e);
  double apart = 0;
  for (const MatrixXd& other : x) apart = std::max(apart, (other - x[0]).cwiseAbs().maxCoeff());
  out.at_most("four threads at once, to the bit", apart, 0);
}

} // namespace

Conformance check_solver(const LinearSolverEntry& s) {
  Conformance out;
  check_solving(s, out);
  check_compliance(s, out);
  check_pivots(s, out);
  check_refusal(s, out);
  check_threads(s, out);
  return out;
}

} // namespace bedbow
