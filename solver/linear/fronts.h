/// \file
/// Symbolic elimination: the dense fronts of the multifrontal method (Duff & Reid 1983; Liu 1992, SIAM Review 34(1)
/// 82-109), found on the graph of groups, which has a sixth of the matrix's unknowns.
#pragma once

#include "solver/linear/graph.h"

#include <cstddef>
#include <span>
#include <vector>

namespace bedbow::linear {

/// Fronts come in postorder: children before parents, a subtree without gaps. Groups are renumbered so that the
/// pivots of the fronts follow one another.
struct Fronts {
  std::vector<int> order;  ///< order[new] = old, of the groups
  std::vector<int> first;  ///< first unknown of each group in the new order, and the number of unknowns at the end
  std::vector<int> pivot;  ///< first pivot group of each front, and the number of groups at the end
  std::vector<int> parent; ///< -1: none
  std::vector<int> begin;  ///< first front of the subtree that ends with this one
  std::vector<std::size_t> rows_start; ///< of each front in `rows`, and their number at the end
  std::vector<int> rows;               ///< groups of each front, ascending, its pivots first
  std::vector<std::size_t> values;     ///< where each front's columns begin in the factor, and its size at the end
  std::vector<double> work;            ///< multiply-adds of each subtree

  [[nodiscard]] int size() const { return static_cast<int>(parent.size()); }
  [[nodiscard]] std::span<const int> rows_of(int front) const {
    return {rows.data() + rows_start[front], rows_start[front + 1] - rows_start[front]};
  }
  /// Groups of a front that it does not eliminate.
  [[nodiscard]] std::span<const int> beyond(int front) const {
    return rows_of(front).subspan(static_cast<std::size_t>(pivot[front + 1] - pivot[front]));
  }
  /// Children of each front, ascending.
  [[nodiscard]] std::vector<std::vector<int>> children() const;
  /// Unknowns that a front eliminates, and all that it touches.
  [[nodiscard]] int pivots(int front) const { return first[pivot[front + 1]] - first[pivot[front]]; }
  [[nodiscard]] int height(int front) const {
    const int pivots_ = pivots(front);
    return pivots_ == 0 ? 0 : static_cast<int>((values[front + 1] - values[front]) / static_cast<std::size_t>(pivots_));
  }
  [[nodiscard]] double total_work() const;
};

/// \param order an elimination order of the groups; it is kept except for the order of independent ones.
Fronts make_fronts(const Quotient& q, std::span<const int> order);

/// Multiply-adds of the longest chain from a leaf to a root: a lower bound for any number of cores.
double longest_chain(const Fronts& fronts);

/// Minimum degree, with a cut through the middle of the structure ordered last, then those through the middles of its
/// parts, to `levels` levels. The cuts follow the breadth-first levels of Cuthill & McKee, across a long structure.
std::vector<int> dissected_order(const Graph& graph, int levels);

} // namespace bedbow::linear
