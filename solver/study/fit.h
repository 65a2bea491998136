/// \file
/// Dial readings against the model: unknowns adjusted by nonlinear least squares, with their identifiability.
#pragma once

#include <Eigen/Core>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace bedbow {

/// One unknown, > 0 like stiffnesses and moduli are.
struct FitParameter {
  std::string name;
  double start = 0;                      ///< [SI] > 0
  std::optional<double> least{}, most{}; ///< [SI] > 0
};

/// Model readings for values of the unknowns. Throws std::runtime_error where the machine can't be solved: those values
/// are rejected, but at the start and the end the error is passed on.
using FitModel = std::function<Eigen::VectorXd(const Eigen::VectorXd& values)>;

struct FitValue {
  std::string name;
  double value = 0;          ///< [SI]
  double error = 0;          ///< standard error [SI]; NaN where not identifiable
  bool at_bound = false;     ///< stopped at `least` or `most`
  bool undetermined = false; ///< the readings hardly change with it
};

/// Two unknowns that the readings can't separate.
struct FitPair {
  std::size_t one = 0, other = 0; ///< indices into FitResult::values
  double correlation = 0;
};

struct FitResult {
  std::vector<FitValue> values;
  Eigen::VectorXd before, after; ///< model readings at start and at the end
  Eigen::VectorXd residuals;     ///< measured less model
  double noise = 0;              ///< standard deviation of a reading, on which the standard errors are based
  bool converged = false;
  int evaluations = 0;
  std::vector<FitPair> alike; ///< correlation beyond +-0.95
};

/// Adjusts the unknowns' logarithms by the Levenberg-Marquardt method (Eigen's port of MINPACK), each bounded one held
/// at its bound where it would leave. Standard errors: noise^2 (J'J)^-1 in the logarithms, J by central differences.
/// \param readings measured [m]. \param reading_error known standard deviation of a reading [m]; else it is taken from
/// the residuals, which needs more readings than unknowns (errors are NaN without). Throws std::invalid_argument for
/// fewer readings than unknowns, or values that are not positive.
FitResult fit(const std::vector<FitParameter>& parameters, const Eigen::VectorXd& readings, const FitModel& model,
              std::optional<double> reading_error = {});

} // namespace bedbow
