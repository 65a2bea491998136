/// \file
/// Why a machine does not pass, as data: what fails, by how much, where and when. io/results/reason_words.h words it.
#pragma once

#include "mesh/piece/figure.h"
#include "solver/strength/allowable.h"

#include <limits>
#include <string>
#include <vector>

namespace bedbow {

struct Reason {
  Failure failure = Failure::bows;
  std::string part;  ///< "post left end", "stress in clamp.plate", "clamp"; buckling: what moves
  std::string check; ///< "bow", "bend angle", "displacement", "rotation", "nose opening", "buckling", or Check::what
  double value = 0;  ///< SI: none, [m], [rad] or [N], as `of` says
  double limit = 0;  ///< likewise
  FigureKind of = FigureKind::ratio;
  std::string step{};                                  ///< name of the step
  double x = std::numeric_limits<double>::quiet_NaN(); ///< along the bend line [m]; NaN where that says nothing
  bool least = false;                                  ///< the limit is the least that passes, not the greatest

  /// How many times the limit is exceeded: above 1.
  [[nodiscard]] double over() const { return least ? limit / value : value / limit; }
};

/// What breaks before what yields, before what wears, moves and bows; within a kind by how far it is over its limit.
void sort_reasons(std::vector<Reason>& reasons);

} // namespace bedbow
