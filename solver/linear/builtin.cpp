#include "solver/registries.h"

#include <Eigen/SparseCholesky>

#include <cmath>

namespace bedbow {

namespace {

/// Eigen's simplicial LDL'.
class Simplicial final : public Factorization {
public:
  explicit Simplicial(const SymmetricMatrix& lower) { ldlt_.compute(lower); }

  /// First unknown whose pivot is nothing beside its diagonal, or -1.
  [[nodiscard]] int zero_pivot(const SymmetricMatrix& lower) const {
    if (ldlt_.info() != Eigen::Success) return 0;
    const auto& d = ldlt_.vectorD();
    const auto& order = ldlt_.permutationPinv().indices(); // position in the factor -> unknown
    for (Eigen::Index i = 0; i < d.size(); ++i) {
      const int unknown = order.size() ? order[i] : static_cast<int>(i);
      const double diagonal = std::abs(lower.coeff(unknown, unknown));
      if (!(std::abs(d[i]) > 1e-12 * diagonal) || diagonal == 0) return unknown;
    }
    return -1;
  }
  [[nodiscard]] int size() const override { return static_cast<int>(ldlt_.rows()); }
  void solve(Eigen::Ref<Eigen::MatrixXd> b) const override {
    if (b.cols() > 0) b = ldlt_.solve(b).eval();
  }
  [[nodiscard]] int negative_pivots() const override { return static_cast<int>((ldlt_.vectorD().array() < 0).count()); }
  [[nodiscard]] std::size_t bytes() const override {
    return static_cast<std::size_t>(ldlt_.matrixL().nestedExpression().nonZeros()) * 12;
  }

private:
  Eigen::SimplicialLDLT<SymmetricMatrix, Eigen::Lower> ldlt_;
};

FactorOutcome factor_simplicial(const SymmetricMatrix& lower, const FactorHints&) {
  auto f = std::make_unique<Simplicial>(lower);
  const int zero = f->zero_pivot(lower);
  if (zero >= 0) return {nullptr, zero};
  return {std::move(f), -1};
}

} // namespace

void builtin_linear_solvers(Registry<LinearSolverEntry>& solvers) {
  solvers.add({"auto", "chosen by size and shape of the matrix", "", factor_simplicial});
  solvers.add({"simplicial", "sparse LDL' of Eigen, approximate-minimum-degree order", "Eigen 3.4", factor_simplicial});
}

} // namespace bedbow
