/// \file
/// Why a machine does not pass, as data: what fails, by how much, where and when. Text: io/results/reason_text.h.
#pragma once

#include "mesh/piece/quantity.h"
#include "solver/strength/allowable.h"

#include <limits>
#include <string>
#include <vector>

namespace bedbow {

struct Reason {
  Failure failure = Failure::bows;
  std::string part;  ///< "post left end", "stress in clamp.plate", "clamp"; buckling: the mode shape
  std::string check; ///< "bow", "bend angle", "displacement", "rotation", "deviation", "nose opening", "buckling", or
                     ///< Check::what
  double value = 0;  ///< SI: none, [m], [rad] or [N], by `of`
  double limit = 0;  ///< likewise
  Quantity of = Quantity::ratio;
  std::string step{};                                  ///< name of the step
  double x = std::numeric_limits<double>::quiet_NaN(); ///< along the bend line [m]; NaN where it has no meaning
  bool least = false;                                  ///< the limit is the least that passes, not the greatest

  /// Ratio by which the limit is exceeded: above 1.
  [[nodiscard]] double over() const { return least ? limit / value : value / limit; }
};

/// Order: breaks, yields, wears, moves, bows; within a kind by how far the limit is exceeded.
void sort_reasons(std::vector<Reason>& reasons);

} // namespace bedbow
