#include "solver/linear/graph.h"

#include <algorithm>
#include <cstdint>
#include <numeric>

namespace bedbow::linear {

namespace {

// Mixes the bits of an index, so that their sums distinguish sets (Steele, Lea & Flood 2014).
std::uint64_t spread(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15ULL;
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9ULL;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebULL;
  return x ^ (x >> 31);
}

// First unknown of each group. Two sets with the same sum do no harm: a group then contains zeros.
std::vector<int> group_starts(const SymmetricMatrix& lower) {
  const auto n = static_cast<int>(lower.cols());
  std::vector<std::uint64_t> mark(n), sum(n);
  for (int i = 0; i < n; ++i) sum[i] = mark[i] = spread(i);
  for (int j = 0; j < n; ++j)
    for (SymmetricMatrix::InnerIterator it(lower, j); it; ++it)
      if (it.row() > j) {
        sum[j] += mark[it.row()];
        sum[it.row()] += mark[j];
      }
  std::vector<int> first;
  for (int i = 0; i < n; ++i)
    if (i == 0 || sum[i] != sum[i - 1]) first.push_back(i);
  first.push_back(n);
  return first;
}

} // namespace

Quotient quotient(const SymmetricMatrix& lower) {
  Quotient q;
  q.first = group_starts(lower);
  const int groups = static_cast<int>(q.first.size()) - 1;
  std::vector<int> group_of(lower.cols());
  for (int g = 0; g < groups; ++g) std::fill(group_of.begin() + q.first[g], group_of.begin() + q.first[g + 1], g);

  // One column represents its group, since by definition all columns of a group have the same pattern.
  std::vector<int> seen(groups, -1), degree(groups + 1, 0);
  std::vector<std::pair<int, int>> edges;
  edges.reserve(static_cast<std::size_t>(groups) * 4);
  for (int g = 0; g < groups; ++g)
    for (SymmetricMatrix::InnerIterator it(lower, q.first[g]); it; ++it) {
      const int h = group_of[it.row()];
      if (h <= g || seen[h] == g) continue;
      seen[h] = g;
      edges.emplace_back(g, h);
      ++degree[g + 1];
      ++degree[h + 1];
    }
  q.graph.start.assign(degree.begin(), degree.end());
  std::partial_sum(q.graph.start.begin(), q.graph.start.end(), q.graph.start.begin());
  q.graph.adjacent.resize(q.graph.start.back());
  std::vector<int> next(q.graph.start.begin(), q.graph.start.end() - 1);
  // Edges come with g ascending: first the smaller neighbours of each node, then the larger, both ascending.
  for (const auto& [g, h] : edges) q.graph.adjacent[next[h]++] = g;
  for (const auto& [g, h] : edges) q.graph.adjacent[next[g]++] = h;
  return q;
}

std::vector<int> expand(std::span<const int> group_order, std::span<const int> first) {
  std::vector<int> order;
  order.reserve(first.back());
  for (const int g : group_order)
    for (int i = first[g]; i < first[g + 1]; ++i) order.push_back(i);
  return order;
}

double envelope_work(const Quotient& q, std::span<const int> group_order) {
  const int groups = q.graph.size();
  std::vector<int> position(groups), start(groups + 1, 0); // of the group; first unknown, new numbering
  for (int p = 0; p < groups; ++p) {
    position[group_order[p]] = p;
    start[p + 1] = start[p] + q.width(group_order[p]);
  }
  double work = 0;
  for (int p = 0; p < groups; ++p) {
    int low = p;
    for (const int h : q.graph.neighbours(group_order[p])) low = std::min(low, position[h]);
    const double length = start[p + 1] - start[low];
    work += 0.5 * q.width(group_order[p]) * length * length;
  }
  return work;
}

} // namespace bedbow::linear
