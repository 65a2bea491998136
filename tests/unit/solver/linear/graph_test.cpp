#include "solver/linear/graph.h"

#include "linear_matrices.h"
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace bedbow::linear {

namespace {

bool is_permutation(std::vector<int> order, int n) {
  std::ranges::sort(order);
  std::vector<int> all(n);
  std::iota(all.begin(), all.end(), 0);
  return order == all;
}

} // namespace

TEST(Graph, UnknownsOfANodeGoTogether) {
  const Quotient q = quotient(test::grid(5, 4, 6, 1));
  ASSERT_EQ(q.graph.size(), 20);
  for (int g = 0; g < 20; ++g) EXPECT_EQ(q.width(g), 6);
  // Node 5 = (1, 1) has all eight neighbours, the corner has three.
  EXPECT_EQ(std::vector<int>(q.graph.neighbours(5).begin(), q.graph.neighbours(5).end()),
            (std::vector<int>{0, 1, 2, 4, 6, 8, 9, 10}));
  EXPECT_EQ(q.graph.neighbours(0).size(), 3U);
}

TEST(Graph, OrdersArePermutationsAndSurviveParts) {
  SymmetricMatrix parts(40, 40); // three separate pieces, one a lone unknown
  for (int i = 0; i < 40; ++i) parts.insert(i, i) = 1;
  for (int i = 0; i + 1 < 20; ++i) parts.insert(i + 1, i) = 1;
  for (int i = 21; i + 1 < 40; ++i) parts.insert(i + 1, i) = 1;
  parts.makeCompressed();
  const Quotient q = quotient(parts);
  EXPECT_TRUE(is_permutation(reverse_cuthill_mckee(q.graph), q.graph.size()));
  EXPECT_TRUE(is_permutation(minimum_degree(q.graph), q.graph.size()));
  EXPECT_TRUE(is_permutation(expand(reverse_cuthill_mckee(q.graph), q.first), 40));
}

// A strip numbered along its length has half-bandwidth (length + 1) nodes; across, (width + 1): the order finds that.
TEST(Graph, StripIsTurnedRound) {
  const Quotient q = quotient(test::grid(4, 60, 2, 1));
  std::vector<int> natural(q.graph.size());
  std::iota(natural.begin(), natural.end(), 0);
  const double before = envelope_work(q, natural), after = envelope_work(q, reverse_cuthill_mckee(q.graph));
  EXPECT_LT(after, before / 50);
  // In the order given, all but the first row of nodes reach back 61 nodes, so that 360 rows have 124 numbers.
  EXPECT_NEAR(before, 0.5 * 360 * 124 * 124, 0.001 * before);
}

TEST(Graph, EmptyMatrix) {
  const Quotient q = quotient(SymmetricMatrix(0, 0));
  EXPECT_EQ(q.graph.size(), 0);
  EXPECT_TRUE(reverse_cuthill_mckee(q.graph).empty());
  EXPECT_TRUE(minimum_degree(q.graph).empty());
}

} // namespace bedbow::linear
