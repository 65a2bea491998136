#include "solver/study/fit.h"

#include "solver/linear/dense.h"

#include <Eigen/Core>
#include <unsupported/Eigen/NonLinearOptimization>
#include <unsupported/Eigen/NumericalDiff>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr double alike_from = 0.95;
// A tenfold change whose effect on the readings is below their noise: not identifiable.
constexpr double blind_error = 2.302585;
constexpr double difference = 1e-3; // of a logarithm: 0.1 %

constexpr double failed_residual = 1e6; // in units of the greatest reading: worse than any solved one

/// Residuals as functions of the logarithms of the free unknowns, in the library's form.
struct Residuals {
  using Scalar = double;
  enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };
  using InputType = Eigen::VectorXd;
  using ValueType = Eigen::VectorXd;
  using JacobianType = Eigen::MatrixXd;

  const Eigen::VectorXd& readings;
  const FitModel& model;
  Eigen::VectorXd logs; ///< of all unknowns; the free ones are overwritten
  std::vector<Eigen::Index> free;
  double unit = 1; ///< residuals are given in this, so that the library's tolerances suit
  mutable int evaluations = 0;

  [[nodiscard]] int inputs() const { return static_cast<int>(free.size()); }
  [[nodiscard]] int values() const { return static_cast<int>(readings.size()); }
  [[nodiscard]] Eigen::VectorXd all(const Eigen::VectorXd& x) const {
    Eigen::VectorXd out = logs;
    for (std::size_t k = 0; k < free.size(); ++k) out[free[k]] = x[static_cast<Eigen::Index>(k)];
    return out;
  }
  int operator()(const Eigen::VectorXd& x, Eigen::VectorXd& f) const {
    ++evaluations;
    try {
      f = (readings - model(all(x).array().exp())) / unit;
    } catch (const std::runtime_error&) {
      f.setConstant(readings.size(), failed_residual); // values that can't be solved are rejected
    }
    return 0;
  }
  int df(const Eigen::VectorXd& x, Eigen::MatrixXd& J) const {
    Eigen::VectorXd up(readings.size());
    Eigen::VectorXd down(readings.size());
    J.resize(readings.size(), x.size());
    for (Eigen::Index k = 0; k < x.size(); ++k) {
      Eigen::VectorXd moved = x;
      moved[k] += difference;
      (*this)(moved, up);
      moved[k] -= 2 * difference;
      (*this)(moved, down);
      J.col(k) = (up - down) / (2 * difference);
    }
    return 0;
  }
};

void check(const std::vector<FitParameter>& parameters, const Eigen::VectorXd& readings) {
  if (parameters.empty()) throw std::invalid_argument("nothing to fit: name the unknowns in [[fit.unknown]]");
  if (readings.size() < static_cast<Eigen::Index>(parameters.size()))
    throw std::invalid_argument(std::to_string(readings.size()) + " readings can't determine " +
                                std::to_string(parameters.size()) + " unknowns: read more dials");
  for (const FitParameter& p : parameters)
    if (!(p.start > 0) || (p.least && !(*p.least > 0)) || (p.most && p.least && *p.most <= *p.least))
      throw std::invalid_argument(p.name +
                                  ": start and bounds of an unknown must be greater than 0, and `from` below `to`");
}

/// Runs the library until no unknown leaves its bounds; those that would are fixed there.
bool descend(const std::vector<FitParameter>& parameters, Residuals& r, std::vector<FitValue>& values) {
  for (std::size_t round = 0; round <= parameters.size(); ++round) {
    Eigen::VectorXd x(r.inputs());
    for (std::size_t k = 0; k < r.free.size(); ++k) x[static_cast<Eigen::Index>(k)] = r.logs[r.free[k]];
    bool converged = true;
    if (r.inputs() > 0) {
      Eigen::LevenbergMarquardt<Residuals> lm(r);
      lm.parameters.ftol = lm.parameters.xtol = 1e-10;
      lm.parameters.maxfev = 400;
      const auto status = lm.minimize(x);
      converged = status != Eigen::LevenbergMarquardtSpace::TooManyFunctionEvaluation &&
                  status != Eigen::LevenbergMarquardtSpace::ImproperInputParameters;
      r.logs = r.all(x);
    }
    std::vector<Eigen::Index> still;
    for (const Eigen::Index i : r.free) {
      const FitParameter& p = parameters[static_cast<std::size_t>(i)];
      FitValue& v = values[static_cast<std::size_t>(i)];
      v.at_bound = (p.least && r.logs[i] < std::log(*p.least)) || (p.most && r.logs[i] > std::log(*p.most));
      if (v.at_bound)
        r.logs[i] = std::log(p.least && r.logs[i] < std::log(*p.least) ? *p.least : *p.most);
      else
        still.push_back(i);
    }
    if (still.size() == r.free.size()) return converged;
    r.free = still;
  }
  return false;
}

/// Standard errors and correlated pairs, from the covariance of the free logarithms.
void judge(const Residuals& r, FitResult& out) {
  const auto n = static_cast<Eigen::Index>(r.free.size());
  if (n == 0) return;
  Eigen::VectorXd x(n);
  for (Eigen::Index k = 0; k < n; ++k) x[k] = r.logs[r.free[static_cast<std::size_t>(k)]];
  Eigen::MatrixXd J;
  r.df(x, J);
  J *= r.unit;
  // Directions without effect on any reading have zero singular values: a floor turns them into huge errors.
  const RightSingular svd = right_singular(J);
  const Eigen::VectorXd s = svd.values.cwiseMax(1e-12 * std::max(svd.values[0], 1e-300));
  const Eigen::MatrixXd covariance = svd.vectors * s.cwiseAbs2().cwiseInverse().asDiagonal() * svd.vectors.transpose();
  for (Eigen::Index k = 0; k < n; ++k) {
    FitValue& v = out.values[static_cast<std::size_t>(r.free[static_cast<std::size_t>(k)])];
    const double error = out.noise * std::sqrt(covariance(k, k));
    v.undetermined = error > blind_error || s[0] <= 1e-300;
    v.error = v.undetermined ? std::numeric_limits<double>::quiet_NaN() : v.value * error;
    for (Eigen::Index j = 0; j < k; ++j) {
      const double c = covariance(k, j) / std::sqrt(covariance(k, k) * covariance(j, j));
      if (std::abs(c) > alike_from)
        out.alike.push_back({static_cast<std::size_t>(r.free[static_cast<std::size_t>(j)]),
                             static_cast<std::size_t>(r.free[static_cast<std::size_t>(k)]), c});
    }
  }
}

/// Of two correlated unknowns one may drift so far that it has no more effect: then the start reveals the pair.
void name_alike_from(const Residuals& start, FitResult& out) {
  if (std::ranges::none_of(out.values, &FitValue::undetermined)) return;
  FitResult first;
  first.values = out.values;
  first.noise = out.noise;
  judge(start, first);
  for (const auto& pair : first.alike) {
    const bool lost = out.values[pair.one].undetermined || out.values[pair.other].undetermined;
    const bool known =
        std::ranges::any_of(out.alike, [&](const auto& a) { return a.one == pair.one && a.other == pair.other; });
    if (lost && !known) out.alike.push_back(pair);
  }
}

} // namespace

FitResult fit(const std::vector<FitParameter>& parameters, const Eigen::VectorXd& readings, const FitModel& model,
              std::optional<double> reading_error) {
  check(parameters, readings);
  const auto n = static_cast<Eigen::Index>(parameters.size());
  FitResult out;
  Residuals r{readings, model, Eigen::VectorXd(n), {}, std::max(readings.cwiseAbs().maxCoeff(), 1e-12)};
  for (Eigen::Index i = 0; i < n; ++i) {
    r.logs[i] = std::log(parameters[static_cast<std::size_t>(i)].start);
    r.free.push_back(i);
    out.values.push_back({parameters[static_cast<std::size_t>(i)].name});
  }
  const Residuals start = r;
  out.before = model(r.logs.array().exp());
  out.converged = descend(parameters, r, out.values);
  const Eigen::VectorXd values = r.logs.array().exp();
  out.after = model(values);
  out.residuals = readings - out.after;
  for (Eigen::Index i = 0; i < n; ++i) {
    out.values[static_cast<std::size_t>(i)].value = values[i];
    out.values[static_cast<std::size_t>(i)].error = std::numeric_limits<double>::quiet_NaN();
  }
  const auto spare = static_cast<double>(readings.size()) - static_cast<double>(r.free.size());
  out.noise = reading_error ? *reading_error
              : spare > 0   ? std::sqrt(out.residuals.squaredNorm() / spare)
                            : std::numeric_limits<double>::quiet_NaN();
  judge(r, out);
  name_alike_from(start, out);
  out.evaluations = r.evaluations + 2;
  return out;
}

} // namespace bedbow
