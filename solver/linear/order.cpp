// Orderings of a graph.
#include "solver/linear/graph.h"

#include <amd.h>
#include <camd.h>

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace bedbow::linear {

namespace {

// Breadth-first levels from a start; returns the nodes in order of visit, neighbours by ascending degree.
class BreadthFirst {
public:
  explicit BreadthFirst(const Graph& graph)
      : graph_(graph)
      , mark_(graph.size(), 0) {}

  struct Levels {
    std::vector<int> visited;
    int height = 0, last_level = 0; // number of levels; index in visited of the start of the last
  };

  Levels from(int start) {
    ++stamp_;
    Levels out;
    out.visited.push_back(start);
    mark_[start] = stamp_;
    std::size_t begin = 0;
    while (begin < out.visited.size()) {
      const std::size_t end = out.visited.size();
      out.last_level = static_cast<int>(begin);
      ++out.height;
      for (; begin < end; ++begin) visit_neighbours(out.visited[begin], out.visited);
    }
    return out;
  }

  [[nodiscard]] int degree(int i) const { return static_cast<int>(graph_.neighbours(i).size()); }

private:
  void visit_neighbours(int i, std::vector<int>& visited) {
    const auto old = static_cast<std::ptrdiff_t>(visited.size());
    for (const int h : graph_.neighbours(i))
      if (mark_[h] != stamp_) {
        mark_[h] = stamp_;
        visited.push_back(h);
      }
    std::stable_sort(visited.begin() + old, visited.end(), [&](int a, int b) { return degree(a) < degree(b); });
  }

  const Graph& graph_;
  std::vector<int> mark_;
  int stamp_ = 0;
};

// Levels from a node at a far end of the part that holds `start`.
BreadthFirst::Levels from_far_end(BreadthFirst& search, int start) {
  BreadthFirst::Levels levels = search.from(start);
  for (;;) {
    const auto far = std::min_element(levels.visited.begin() + levels.last_level, levels.visited.end(),
                                      [&](int a, int b) { return search.degree(a) < search.degree(b); });
    BreadthFirst::Levels other = search.from(*far);
    const bool taller = other.height > levels.height;
    levels = std::move(other);
    if (!taller) return levels;
  }
}

} // namespace

std::vector<int> reverse_cuthill_mckee(const Graph& graph) {
  std::vector<int> order;
  order.reserve(graph.size());
  std::vector<char> done(graph.size(), 0);
  BreadthFirst search(graph);
  for (int i = 0; i < graph.size(); ++i) {
    if (done[i]) continue;
    for (const int v : from_far_end(search, i).visited) {
      done[v] = 1;
      order.push_back(v);
    }
  }
  std::ranges::reverse(order);
  return order;
}

std::vector<int> minimum_degree(const Graph& graph) {
  std::vector<int> order(graph.size());
  std::iota(order.begin(), order.end(), 0);
  if (graph.adjacent.empty()) return order;
  double control[AMD_CONTROL];
  amd_defaults(control);
  if (amd_order(graph.size(), graph.start.data(), graph.adjacent.data(), order.data(), control, nullptr) < AMD_OK)
    throw std::runtime_error("the minimum-degree ordering failed: out of memory?");
  return order;
}

std::vector<int> minimum_degree(const Graph& graph, std::span<const int> late) {
  std::vector<int> order(graph.size()), constraint(late.begin(), late.end());
  std::iota(order.begin(), order.end(), 0);
  if (graph.adjacent.empty()) return order;
  double control[CAMD_CONTROL];
  camd_defaults(control);
  if (camd_order(graph.size(), graph.start.data(), graph.adjacent.data(), order.data(), control, nullptr,
                 constraint.data()) < CAMD_OK)
    throw std::runtime_error("the minimum-degree ordering failed: out of memory?");
  return order;
}

} // namespace bedbow::linear
