// The tree of fronts against elimination on a dense pattern, and work along it in threads.
#include "solver/linear/fronts.h"
#include "solver/linear/tree_tasks.h"

#include "tests/unit/solver/linear/linear_matrices.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <numeric>
#include <stdexcept>

namespace bedbow::linear {
namespace {

using Pattern = Eigen::Matrix<bool, Eigen::Dynamic, Eigen::Dynamic>;

/// What elimination fills below the diagonal, unknown by unknown in the given order.
Pattern filled_by_elimination(const SymmetricMatrix& lower, const std::vector<int>& order) {
  const auto n = static_cast<int>(order.size());
  const Eigen::MatrixXd full = test::full(lower);
  Pattern filled(n, n);
  for (int i = 0; i < n; ++i)
    for (int j = 0; j < n; ++j) filled(i, j) = full(order[i], order[j]) != 0;
  for (int j = 0; j < n; ++j) {
    std::vector<int> below;
    for (int i = j + 1; i < n; ++i)
      if (filled(i, j)) below.push_back(i);
    for (const int a : below)
      for (const int b : below) filled(a, b) = true;
  }
  return filled;
}

/// Group of each unknown, both in the order of the fronts.
std::vector<int> groups_of(const Fronts& f) {
  std::vector<int> out;
  for (std::size_t g = 0; g + 1 < f.first.size(); ++g)
    out.insert(out.end(), f.first[g + 1] - f.first[g], static_cast<int>(g));
  return out;
}

TEST(Fronts, HoldWhatEliminationFills) {
  const SymmetricMatrix a = test::grid(30, 8, 2, 1);
  const Quotient q = quotient(a);
  for (const int cuts : {0, 1, 2}) {
    const Fronts f = make_fronts(q, dissected_order(q.graph, cuts));
    std::vector<int> unknowns = expand(f.order, q.first), sorted = unknowns;
    std::sort(sorted.begin(), sorted.end());
    for (std::size_t i = 0; i < sorted.size(); ++i) ASSERT_EQ(sorted[i], i) << "an order is a permutation";
    const Pattern filled = filled_by_elimination(a, unknowns);
    const std::vector<int> group = groups_of(f);
    for (int i = 0; i < f.size(); ++i) {
      const auto rows = f.rows_of(i);
      for (int j = f.first[f.pivot[i]]; j < f.first[f.pivot[i + 1]]; ++j)
        for (int k = j + 1; k < static_cast<int>(unknowns.size()); ++k) {
          if (filled(k, j)) {
            ASSERT_TRUE(std::binary_search(rows.begin(), rows.end(), group[k])) << "front " << i << " lacks row " << k;
          }
        }
      if (f.parent[i] < 0) continue;
      EXPECT_GT(f.parent[i], i);
      EXPECT_LE(f.begin[f.parent[i]], f.begin[i]);
      // What a front leaves must find its place in the parent.
      const auto up = f.rows_of(f.parent[i]);
      for (const int g : f.beyond(i)) EXPECT_TRUE(std::binary_search(up.begin(), up.end(), g));
    }
    EXPECT_LE(longest_chain(f), f.total_work());
  }
}

// Without couplings there is nothing to join but small fronts; a chain of groups fills only next to its diagonal, so
// that its fronts reach just one group beyond their pivots.
TEST(Fronts, ReachNoFurtherThanAChainDoes) {
  const Quotient q = quotient(test::grid(200, 1, 6, 1));
  std::vector<int> natural(q.graph.size());
  std::iota(natural.begin(), natural.end(), 0);
  const Fronts f = make_fronts(q, natural);
  for (int i = 0; i < f.size(); ++i) EXPECT_LE(f.beyond(i).size(), 1U) << "front " << i;
}

TEST(Fronts, ACutHalvesTheLongestChainOfAStrip) {
  const Quotient q = quotient(test::grid(300, 12, 6, 1));
  EXPECT_LT(longest_chain(make_fronts(q, dissected_order(q.graph, 1))),
            0.7 * longest_chain(make_fronts(q, dissected_order(q.graph, 0))));
}

Fronts strip() {
  const Quotient q = quotient(test::grid(300, 12, 6, 1));
  return make_fronts(q, dissected_order(q.graph, 2));
}

TEST(TreeTasks, ChildrenBeforeParentsAndBack) {
  const Fronts f = strip();
  for (const int threads : {1, 2, 5}) {
    std::vector<std::atomic<int>> up(f.parent.size()), down(f.parent.size());
    const auto children = f.children();
    std::atomic<int> wrong = 0;
    upwards(f, threads, [&](int i, int) {
      for (const int c : children[i]) wrong += up[c] != 1;
      wrong += up[i]++ != 0;
    });
    downwards(f, threads, [&](int i, int) {
      wrong += f.parent[i] >= 0 && down[f.parent[i]] != 1;
      wrong += down[i]++ != 0;
    });
    EXPECT_EQ(wrong, 0);
    for (int i = 0; i < f.size(); ++i) EXPECT_EQ(up[i] + down[i], 2);
  }
}

TEST(TreeTasks, TroubleInAThreadComesOut) {
  const Fronts f = strip();
  for (const int threads : {1, 3})
    EXPECT_THROW(upwards(f, threads,
                         [&](int i, int) {
                           if (i == f.size() / 2) throw std::runtime_error("no more memory");
                         }),
                 std::runtime_error);
}

} // namespace
} // namespace bedbow::linear
