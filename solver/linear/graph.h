/// \file
/// The graph of a sparse symmetric matrix, with unknowns of the same pattern (the dofs of a node) grouped, and
/// orderings of it. An order is a list order[new] = old.
#pragma once

#include "solver/linear/factorization.h"

#include <span>
#include <vector>

namespace bedbow::linear {

/// Neighbours of each node, both ways, without the node itself, ascending.
struct Graph {
  std::vector<int> start{0}, adjacent;
  [[nodiscard]] int size() const { return static_cast<int>(start.size()) - 1; }
  [[nodiscard]] std::span<const int> neighbours(int i) const {
    return {adjacent.data() + start[i], static_cast<std::size_t>(start[i + 1] - start[i])};
  }
};

/// Groups of consecutive unknowns with the same closed neighbourhood, and the graph between the groups.
/// On a mesh of shells a group is a node: a sixth of the unknowns, a thirty-sixth of the entries.
struct Quotient {
  Graph graph;
  std::vector<int> first; ///< first unknown of each group, and the number of unknowns at the end
  [[nodiscard]] int width(int group) const { return first[group + 1] - first[group]; }
};

Quotient quotient(const SymmetricMatrix& lower);

/// Order that keeps the envelope narrow: breadth first from a far end of each part, backwards (Cuthill & McKee 1969,
/// George 1971; far ends by Gibbs, Poole & Stockmeyer 1976). Deterministic.
std::vector<int> reverse_cuthill_mckee(const Graph& graph);

/// Approximate minimum degree (Amestoy, Davis & Duff 1996).
std::vector<int> minimum_degree(const Graph& graph);

/// The same with nodes of a higher number in `late` after all of a lower one (Amestoy, Davis & Duff 2004, CAMD).
/// \param late 0 .. size - 1 for each node.
std::vector<int> minimum_degree(const Graph& graph, std::span<const int> late);

/// Order of the unknowns from an order of the groups.
std::vector<int> expand(std::span<const int> group_order, std::span<const int> first);

/// Multiply-adds of an L D L' that keeps the envelope of the given order of groups.
double envelope_work(const Quotient& q, std::span<const int> group_order);

} // namespace bedbow::linear
