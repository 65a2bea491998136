#include "solver/linear/simplicial.h"

#include <Eigen/SparseCholesky>

#include <cmath>
#include <limits>

namespace bedbow {

namespace {

class Simplicial final : public Factorization {
public:
  explicit Simplicial(const SymmetricMatrix& lower)
      : ldlt_(lower) {}
  [[nodiscard]] int size() const override { return static_cast<int>(ldlt_.rows()); }
  void solve(Eigen::Ref<Eigen::MatrixXd> b) const override {
    if (size() > 0) b = ldlt_.solve(b).eval();
  }
  [[nodiscard]] int negative_pivots() const override { return static_cast<int>((ldlt_.vectorD().array() < 0).count()); }
  [[nodiscard]] std::size_t bytes() const override {
    const auto entries = static_cast<std::size_t>(ldlt_.matrixL().nestedExpression().nonZeros());
    return entries * (sizeof(double) + sizeof(int)) + static_cast<std::size_t>(size()) * (sizeof(double) + sizeof(int));
  }
  [[nodiscard]] const Eigen::SimplicialLDLT<SymmetricMatrix>& ldlt() const { return ldlt_; }

private:
  Eigen::SimplicialLDLT<SymmetricMatrix> ldlt_;
};

} // namespace

FactorOutcome simplicial_factor(const SymmetricMatrix& lower, const FactorHints& hints) {
  auto f = std::make_unique<Simplicial>(lower);
  const auto& ldlt = f->ldlt();
  const Eigen::VectorXd pivots = ldlt.vectorD(), diagonal = lower.diagonal();
  const auto& order = ldlt.permutationPinv().indices();
  constexpr double least = 8 * std::numeric_limits<double>::epsilon();
  for (Eigen::Index j = 0; j < pivots.size(); ++j) {
    const int unknown = order.size() > 0 ? order[j] : static_cast<int>(j);
    const bool good = hints.positive ? pivots[j] > least * diagonal[unknown]
                                     : std::abs(pivots[j]) > least * std::abs(diagonal[unknown]);
    if (!good) return {nullptr, unknown, {}};
  }
  return {std::move(f), -1, {}};
}

} // namespace bedbow
