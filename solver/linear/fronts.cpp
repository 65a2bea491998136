#include "solver/linear/fronts.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <utility>

namespace bedbow::linear {

namespace {

/// A group, later a front, while fronts are being merged.
struct Node {
  std::vector<int> pivots; ///< groups, in order of elimination (numbered by that order)
  std::vector<int> beyond; ///< groups after the pivots that they touch, ascending
  int parent = -1;
  double width = 0, rest = 0; ///< unknowns in pivots, beyond
  double zeros = 0;           ///< stored entries that are zero
  std::vector<int> children;
};

class Builder {
public:
  Builder(const Quotient& q, std::span<const int> order)
      : q_(q)
      , order_(order.begin(), order.end())
      , place_(order.size())
      , nodes_(order.size()) {
    for (std::size_t i = 0; i < order_.size(); ++i) place_[order_[i]] = static_cast<int>(i);
  }

  Fronts build() {
    eliminate();
    join();
    return number();
  }

private:
  [[nodiscard]] double width(int place) const { return q_.width(order_[place]); }

  /// Structure of every group's column, bottom up: its later neighbours and those of its children. A group whose child
  /// has the same structure is merged with it at once.
  void eliminate() {
    const auto n = static_cast<int>(order_.size());
    std::vector<int> mark(n, -1);
    for (int j = 0; j < n; ++j) {
      Node& node = nodes_[j];
      mark[j] = j;
      const auto touch = [&](int i) {
        if (i > j && mark[i] != j) {
          mark[i] = j;
          node.beyond.push_back(i);
          node.rest += width(i);
        }
      };
      for (const int h : q_.graph.neighbours(order_[j])) touch(place_[h]);
      for (const int c : node.children)
        for (const int i : nodes_[c].beyond) touch(i);
      std::sort(node.beyond.begin(), node.beyond.end());
      node.pivots = {j};
      node.width = width(j);
      for (const int c : std::vector<int>(node.children))
        if (nodes_[c].beyond.size() == node.beyond.size() + 1) {
          merge(c, j);
          break;
        }
      if (!node.beyond.empty()) {
        node.parent = node.beyond.front();
        nodes_[node.parent].children.push_back(j);
      }
    }
  }

  /// Puts a child's pivots before the front's own.
  void merge(int child, int into) {
    Node &c = nodes_[child], &p = nodes_[into];
    p.zeros += c.zeros + c.width * (p.width + p.rest - c.rest);
    c.pivots.insert(c.pivots.end(), p.pivots.begin(), p.pivots.end());
    p.pivots = std::move(c.pivots);
    p.width += c.width;
    std::erase(p.children, child);
    p.children.insert(p.children.end(), c.children.begin(), c.children.end());
    for (const int g : c.children) nodes_[g].parent = into;
    c = Node{};
  }

  /// Merges small fronts with their parents where few zeros are added: dense arithmetic is faster than bookkeeping
  /// (Ashcraft & Grimes 1989). The ratios are those of CHOLMOD's guide, widths measured (docs/performance.md).
  void join() {
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      if (nodes_[i].pivots.empty()) continue;
      for (bool again = true; again;) {
        again = false;
        for (const int c : nodes_[i].children)
          if (worth(nodes_[c], nodes_[i])) {
            merge(c, static_cast<int>(i));
            again = true;
            break;
          }
      }
    }
  }
  [[nodiscard]] static bool worth(const Node& c, const Node& p) {
    const double wide = c.width + p.width, high = wide + p.rest;
    const double zeros = c.zeros + p.zeros + c.width * (p.width + p.rest - c.rest);
    const double share = zeros / (wide * high - wide * wide / 2);
    return wide <= 12 || (wide <= 24 && share < 0.8) || (wide <= 48 && share < 0.1) || share < 0.05;
  }

  Fronts number() {
    Fronts f;
    std::vector<int> post; // nodes
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      if (nodes_[i].pivots.empty()) continue;
      // The child with the largest front last: it minimises the memory of waiting updates.
      auto& children = nodes_[i].children;
      std::sort(children.begin(), children.end(),
                [&](int a, int b) { return std::pair(nodes_[a].rest, a) < std::pair(nodes_[b].rest, b); });
    }
    for (std::size_t i = 0; i < nodes_.size(); ++i)
      if (!nodes_[i].pivots.empty() && nodes_[i].parent < 0) visit(static_cast<int>(i), post);
    std::vector<int> front_of(nodes_.size(), -1), renumbered(nodes_.size());
    f.first.push_back(0);
    for (const int i : post) {
      front_of[i] = f.size();
      f.parent.push_back(-1);
      f.pivot.push_back(static_cast<int>(f.order.size()));
      for (const int p : nodes_[i].pivots) {
        renumbered[p] = static_cast<int>(f.order.size());
        f.order.push_back(order_[p]);
        f.first.push_back(f.first.back() + q_.width(order_[p]));
      }
    }
    f.pivot.push_back(static_cast<int>(f.order.size()));
    f.rows_start.push_back(0);
    f.values.push_back(0);
    f.begin.resize(post.size());
    f.work.assign(post.size(), 0);
    std::iota(f.begin.begin(), f.begin.end(), 0);
    for (int k = 0; k < f.size(); ++k) {
      const Node& node = nodes_[post[k]];
      for (int p = f.pivot[k]; p < f.pivot[k + 1]; ++p) f.rows.push_back(p);
      const auto pivots_end = static_cast<std::ptrdiff_t>(f.rows.size());
      for (const int b : node.beyond) f.rows.push_back(renumbered[b]);
      std::sort(f.rows.begin() + pivots_end, f.rows.end());
      f.rows_start.push_back(f.rows.size());
      f.values.push_back(f.values.back() + static_cast<std::size_t>(node.width * (node.width + node.rest)));
      const double w = node.width, r = node.rest;
      f.work[k] += w * w * w / 6 + w * w * r / 2 + w * r * r / 2;
      if (node.parent < 0) continue;
      const int parent = f.parent[k] = front_of[node.parent];
      f.begin[parent] = std::min(f.begin[parent], f.begin[k]);
      f.work[parent] += f.work[k];
    }
    return f;
  }

  /// Postorder, without recursion: a chain may be as deep as the structure is long.
  void visit(int root, std::vector<int>& post) const {
    std::vector<std::pair<int, std::size_t>> stack{{root, 0}};
    while (!stack.empty()) {
      auto& [i, next] = stack.back();
      if (next < nodes_[i].children.size()) {
        const int child = nodes_[i].children[next++];
        stack.emplace_back(child, 0);
      } else {
        post.push_back(i);
        stack.pop_back();
      }
    }
  }

  const Quotient& q_;
  std::vector<int> order_, place_;
  std::vector<Node> nodes_;
};

/// The part of a graph between some nodes, numbered as they are listed. \param local scratch, -1 everywhere.
Graph part_of(const Graph& g, const std::vector<int>& nodes, std::vector<int>& local) {
  for (std::size_t i = 0; i < nodes.size(); ++i) local[nodes[i]] = static_cast<int>(i);
  Graph out;
  for (const int v : nodes) {
    for (const int h : g.neighbours(v))
      if (local[h] >= 0) out.adjacent.push_back(local[h]);
    out.start.push_back(static_cast<int>(out.adjacent.size()));
  }
  for (const int v : nodes) local[v] = -1;
  return out;
}

/// Elimination rank of each node: 0 inside a part, higher on the cuts, highest on the first.
class Cuts {
public:
  Cuts(const Graph& g, int levels)
      : graph_(g)
      , local_(g.size(), -1)
      , late_(g.size(), 0) {
    std::vector<int> all(g.size());
    std::iota(all.begin(), all.end(), 0);
    cut(all, levels);
  }
  [[nodiscard]] const std::vector<int>& late() const { return late_; }

private:
  void cut(const std::vector<int>& nodes, int levels) {
    constexpr std::size_t least = 200;
    if (levels == 0 || nodes.size() < least) return;
    const Graph part = part_of(graph_, nodes, local_);
    std::vector<char> far(nodes.size(), 0);
    const std::vector<int> along = reverse_cuthill_mckee(part);
    for (std::size_t i = along.size() / 2; i < along.size(); ++i) far[along[i]] = 1;
    std::array<std::vector<int>, 2> inside;
    for (int i = 0; i < part.size(); ++i) {
      const auto near = part.neighbours(i);
      if (!far[i] && std::any_of(near.begin(), near.end(), [&](int h) { return far[h] != 0; }))
        late_[nodes[i]] = levels;
      else
        inside[far[i] ? 1 : 0].push_back(nodes[i]);
    }
    for (const auto& half : inside) cut(half, levels - 1);
  }

  const Graph& graph_;
  std::vector<int> local_, late_;
};

} // namespace

double Fronts::total_work() const {
  double sum = 0;
  for (int i = 0; i < size(); ++i)
    if (parent[i] < 0) sum += work[i];
  return sum;
}

std::vector<std::vector<int>> Fronts::children() const {
  std::vector<std::vector<int>> out(parent.size());
  for (int i = 0; i < size(); ++i)
    if (parent[i] >= 0) out[parent[i]].push_back(i);
  return out;
}

Fronts make_fronts(const Quotient& q, std::span<const int> order) {
  return Builder(q, order).build();
}

std::vector<int> dissected_order(const Graph& graph, int levels) {
  return minimum_degree(graph, Cuts(graph, levels).late());
}

double longest_chain(const Fronts& f) {
  std::vector<double> own = f.work, below(f.parent.size(), 0);
  double longest = 0;
  for (int i = 0; i < f.size(); ++i)
    if (f.parent[i] >= 0) own[f.parent[i]] -= f.work[i];
  for (int i = 0; i < f.size(); ++i) {
    const double until = own[i] + below[i];
    longest = std::max(longest, until);
    if (f.parent[i] >= 0) below[f.parent[i]] = std::max(below[f.parent[i]], until);
  }
  return longest;
}

} // namespace bedbow::linear
