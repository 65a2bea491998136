/// \file
/// Positions of a child's rows in its parent's front.
#pragma once

#include "solver/linear/fronts.h"

#include <vector>

namespace bedbow::linear {

/// Rows that stay contiguous in the parent.
struct Run {
  int from; ///< among the child's rows beyond its pivots
  int to;   ///< in the parent's front
  int length;
};

/// Rows of one front at a time, by group; each thread has its own.
class FrontRows {
public:
  explicit FrontRows(const Fronts& fronts)
      : fronts_(fronts)
      , at_(fronts.order.size()) {}

  void set(int front) {
    front_ = front;
    int row = 0;
    for (const int g : fronts_.rows_of(front)) {
      at_[g] = row;
      row += fronts_.first[g + 1] - fronts_.first[g];
    }
  }

  /// First row of a group that the front touches.
  [[nodiscard]] int operator[](int group) const { return at_[group]; }

  /// The rows of a child of the front; no run goes across the end of the front's pivots.
  const std::vector<Run>& runs_of(int child) {
    runs_.clear();
    const int pivots = fronts_.pivots(front_);
    int from = 0;
    for (const int g : fronts_.beyond(child)) {
      const int width = fronts_.first[g + 1] - fronts_.first[g], to = at_[g];
      if (!runs_.empty() && runs_.back().to + runs_.back().length == to && to != pivots)
        runs_.back().length += width;
      else
        runs_.push_back({from, to, width});
      from += width;
    }
    return runs_;
  }

private:
  const Fronts& fronts_;
  int front_ = -1;
  std::vector<int> at_;
  std::vector<Run> runs_;
};

} // namespace bedbow::linear
