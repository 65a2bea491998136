/// \file
/// Section forces of welded bars, averaged along the bar over the depth of the section that they make together
/// (docs/theory/validity.md).
#pragma once

#include "solver/model/steps.h"

#include <span>
#include <vector>

namespace bedbow {

/// Length along a bar over which section forces are averaged, per depth: mean distance of a disc of that diameter from
/// its middle line, which for a beam under a point force is the reduction by the local field of the force, F h/(3 pi).
inline constexpr double window_per_depth = 8 / (3 * 3.14159265358979323846);

/// Running means of the section forces of one beam bar. Prefix sums over its elements: O(n) for all stations in order.
class MeanForces {
public:
  /// \param layout of a beam bar. \param first forces at the start of each of its elements. Refers to its arguments.
  MeanForces(const Model& model, const StepSolution& step, const BarLayout& layout,
             std::span<const SectionForces> first);

  /// Mean over `window` [m] centred at a station, less what lies beyond the bar's ends.
  [[nodiscard]] SectionForces at(std::size_t station, double window);

private:
  using Sum = Eigen::Matrix<double, 6, 1>;
  /// Integral of the forces of an element from its start over a distance; exact, as they are quadratic at most.
  [[nodiscard]] Sum integral(std::size_t element, double distance) const;
  /// Integral from the bar's start to x. \param element where the last one was found, near x.
  [[nodiscard]] Sum integral_to(double x, std::size_t& element) const;

  const Model& model_;
  const StepSolution& step_;
  const BarLayout& layout_;
  std::span<const SectionForces> first_;
  std::vector<Sum> before_;       ///< integral from the bar's start to each station
  std::size_t from_ = 0, to_ = 0; ///< elements of the last window's ends
};

} // namespace bedbow
