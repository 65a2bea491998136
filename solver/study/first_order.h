/// \file
/// Importance of the inputs: Sobol's first-order shares of the variance, from the variants as they arrive.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace bedbow {

/// S_k = Var(E[y | row of k]) / Var(y): the part of the variance of a result that an input explains by itself. The
/// remainder to 1 is interaction. Exact for all combinations; for a sample, where means of few values scatter by
/// chance, the part expected by chance is subtracted (Kelley's epsilon squared). Memory depends on the number of rows
/// only. Source: Sobol', Math. Comput. Simul. 55 (2001) 271-280; Kelley, Proc. Natl. Acad. Sci. 21 (1935) 554-559.
class FirstOrderShares {
public:
  /// \param counts rows of each input.
  explicit FirstOrderShares(const std::vector<std::size_t>& counts);
  /// One variant: the row of each input and the result. NaN is ignored.
  void add(const std::vector<std::size_t>& rows, double y);
  /// Shares by input, 0 to 1; all 0 where the result does not vary. \param sampled subtract chance.
  [[nodiscard]] std::vector<double> shares(bool sampled) const;

private:
  struct Sum {
    std::uint64_t n = 0;
    double mean = 0;
  };
  std::vector<std::vector<Sum>> of_; ///< by input and row
  std::uint64_t n_ = 0;
  double mean_ = 0, squares_ = 0; ///< running mean and sum of squared deviations
};

} // namespace bedbow
