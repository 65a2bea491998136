// Linear solvers from plugins.
#include "io/plugin/plugin_parts.h"

#include <cmath>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

/// Backward error |A x - b| / (|A| |x| + |b|), infinity norms, permitted of a solver. A stable one stays below n eps;
/// this only detects a factor that is wrong.
constexpr double most_residual = 1e-9;

class PluginFactor final : public Factorization {
public:
  PluginFactor(const bedbow_linear_solver& functions, std::string place, int size, void* factor)
      : functions_(functions)
      , place_(std::move(place))
      , size_(size)
      , factor_(factor) {}
  PluginFactor(const PluginFactor&) = delete;
  PluginFactor& operator=(const PluginFactor&) = delete;
  PluginFactor(PluginFactor&&) = delete;
  PluginFactor& operator=(PluginFactor&&) = delete;
  ~PluginFactor() override { functions_.release(factor_); }

  [[nodiscard]] int size() const override { return size_; }
  void solve(Eigen::Ref<Eigen::MatrixXd> b) const override {
    if (b.size() == 0) return;
    Eigen::MatrixXd dense = b; // contiguous, unlike a Ref, which may have a stride
    PluginMessage message;
    if (functions_.solve(factor_, dense.data(), static_cast<std::size_t>(dense.rows()),
                         static_cast<std::size_t>(dense.cols()), message.data(), PluginMessage::size()) != 0)
      throw PluginError(place_, message.str());
    if (!dense.allFinite()) throw PluginError(place_, "gave a solution that is not a number");
    b = dense;
  }
  [[nodiscard]] int negative_pivots() const override {
    if (functions_.negative_pivots == nullptr)
      throw std::logic_error("plugin " + place_ + ": does not count negative pivots");
    std::int64_t count = -1;
    PluginMessage message;
    if (functions_.negative_pivots(factor_, &count, message.data(), PluginMessage::size()) != 0)
      throw PluginError(place_, message.str());
    if (count < 0 || count > size_)
      throw PluginError(place_, "claims " + std::to_string(count) + " negative pivots of " + std::to_string(size_));
    return static_cast<int>(count);
  }
  [[nodiscard]] std::size_t bytes() const override { return 0; } // the plugin does not report it

private:
  const bedbow_linear_solver& functions_;
  std::string place_;
  int size_;
  void* factor_;
};

/// Checks with one solution whether the plugin returned a factor of this matrix.
void check_factor(const PluginFactor& factor, const SymmetricMatrix& lower, const std::string& place) {
  const Eigen::VectorXd ones = Eigen::VectorXd::Ones(lower.rows());
  const Eigen::VectorXd b = lower.selfadjointView<Eigen::Lower>() * ones;
  Eigen::MatrixXd x = b;
  factor.solve(x);
  const Eigen::VectorXd left = lower.selfadjointView<Eigen::Lower>() * Eigen::VectorXd(x.col(0)) - b;
  double norm = 0;
  for (Eigen::Index c = 0; c < lower.outerSize(); ++c)
    for (SymmetricMatrix::InnerIterator it(lower, c); it; ++it) norm = std::max(norm, std::abs(it.value()));
  const double error =
      left.lpNorm<Eigen::Infinity>() / (norm * x.lpNorm<Eigen::Infinity>() + b.lpNorm<Eigen::Infinity>());
  if (!(error <= most_residual))
    throw PluginError(place,
                      "leaves a residual of " + std::to_string(error) + " of the matrix; at most 1e-9 is permitted");
}

FactorOutcome factor(const bedbow_linear_solver& functions, const std::string& place, const SymmetricMatrix& lower,
                     const FactorHints& hints) {
  const bedbow_matrix m{sizeof(bedbow_matrix),
                        static_cast<std::size_t>(lower.rows()),
                        static_cast<std::size_t>(lower.nonZeros()),
                        lower.outerIndexPtr(),
                        lower.innerIndexPtr(),
                        lower.valuePtr(),
                        hints.positive ? 1 : 0,
                        hints.block};
  void* made = nullptr;
  std::int64_t zero_pivot = -1;
  PluginMessage message;
  if (functions.factor(&m, &made, &zero_pivot, message.data(), PluginMessage::size()) != 0)
    throw PluginError(place, message.str());
  const int size = static_cast<int>(lower.rows());
  if (made == nullptr) {
    if (zero_pivot < 0 || zero_pivot >= size)
      throw PluginError(place, "returned neither a factor nor an unknown without stiffness");
    return {nullptr, static_cast<int>(zero_pivot), {}};
  }
  auto out = std::make_unique<PluginFactor>(functions, place, size, made);
  if (zero_pivot >= 0) throw PluginError(place, "returned both a factor and an unknown without stiffness");
  check_factor(*out, lower, place);
  return {std::move(out), -1, {}};
}

} // namespace

void add_plugin_solver(const PluginEntry& p, Registries& registries) {
  const auto& functions = p.functions<bedbow_linear_solver>();
  p.need(functions.factor != nullptr, "factor");
  p.need(functions.solve != nullptr, "solve");
  p.need(functions.release != nullptr, "release");
  registries.linear_solvers.add({p.entry.name, p.entry.description, p.entry.source,
                                 [&functions, place = p.place](const SymmetricMatrix& lower, const FactorHints& hints) {
                                   return factor(functions, place, lower, hints);
                                 },
                                 p.origin});
}

} // namespace bedbow
