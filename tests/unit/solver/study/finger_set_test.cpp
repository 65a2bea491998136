#include "solver/study/finger_set.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <functional>
#include <numeric>
#include <set>

namespace bedbow {

namespace {

// All sums of subsets, the plain way.
std::set<int> sums(const std::vector<int>& pieces) {
  std::set<int> out{0};
  for (const int p : pieces) {
    std::set<int> more = out;
    for (const int s : out) more.insert(s + p);
    out = more;
  }
  return out;
}

bool complete(const std::vector<int>& pieces, int total) {
  const auto made = sums(pieces);
  for (int j = 1; j <= total; ++j)
    if (!made.contains(j)) return false;
  return true;
}

// Does any partition of `total` into `count` parts make every number? Tries them all.
bool any_partition(int total, int count) {
  std::vector<int> pieces;
  const std::function<bool(int, int)> go = [&](int left, int least) {
    if (static_cast<int>(pieces.size()) == count) return left == 0 && complete(pieces, total);
    for (int p = least; p <= left; ++p) {
      pieces.push_back(p);
      const bool found = go(left - p, p);
      pieces.pop_back();
      if (found) return true;
    }
    return false;
  };
  return go(total, 1);
}

FingerTask finger_task(double length, double step, bool fill, double gap = 0, double kerf = 0) {
  return {length * 1e-3, step * 1e-3, fill, gap * 1e-3, kerf * 1e-3};
}

// Width of a set measured anew, with its gaps.
double set_width(const FingerSet& s, const FingerUse& use, double gap) {
  double width = -gap;
  for (const int i : use.fingers) width += s.pieces.at(static_cast<std::size_t>(i)) + gap;
  return width;
}

} // namespace

TEST(CompletePartition, FewestByBruteForce) {
  for (int total = 1; total <= 22; ++total) {
    const std::vector<int> found = complete_partition(total);
    EXPECT_EQ(std::accumulate(found.begin(), found.end(), 0), total);
    EXPECT_TRUE(complete(found, total)) << total;
    for (int fewer = 1; fewer < static_cast<int>(found.size()); ++fewer)
      EXPECT_FALSE(any_partition(total, fewer)) << total;
  }
}

TEST(CompletePartition, EveryTotalToTwoThousandIsComplete) {
  for (int total = 1; total <= 2000; ++total) {
    const std::vector<int> found = complete_partition(total);
    EXPECT_TRUE(std::is_sorted(found.begin(), found.end()));
    int reach = 0; // sorted pieces leave no hole as long as none exceeds what is reached by more than one
    for (const int p : found) {
      EXPECT_LE(p, reach + 1) << total;
      reach += p;
    }
    EXPECT_EQ(reach, total);
    EXPECT_EQ(found.size(), static_cast<std::size_t>(std::floor(std::log2(total))) + 1) << total;
  }
}

TEST(Fingers, EveryWidthIsMadeBothWays) {
  for (const bool fill : {false, true})
    for (const double length : {5.0, 10.0, 100.0, 102.5, 403.0, 900.0}) {
      const FingerSet s = find_fingers(finger_task(length, 5, fill));
      EXPECT_TRUE(s.not_made.empty()) << length;
      ASSERT_EQ(s.uses.size(), static_cast<std::size_t>(length / 5));
      for (const FingerUse& use : s.uses) {
        EXPECT_NEAR(set_width(s, use, 0), use.width, 1e-9);
        EXPECT_NEAR(use.set, use.width, 1e-9);
        EXPECT_EQ(std::set<int>(use.fingers.begin(), use.fingers.end()).size(), use.fingers.size()); // each once
      }
      EXPECT_TRUE(!fill || std::abs(s.total - length * 1e-3) < 1e-9) << length;
    }
}

TEST(Fingers, FreeTotalDoubles) {
  const FingerSet s = find_fingers(finger_task(100, 10, false));
  ASSERT_EQ(s.pieces.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(s.pieces[i], 0.010 * std::pow(2, i), 1e-12);
  EXPECT_EQ(s.filler, 0);
}

TEST(Fingers, OddLengthNeedsAFiller) {
  const FingerSet s = find_fingers(finger_task(403, 5, true));
  EXPECT_NEAR(s.filler, 0.003, 1e-9);
  EXPECT_NEAR(s.pieces.front(), 0.003, 1e-9);
  EXPECT_EQ(s.pieces.size(), 8u); // 80 steps need 7
  EXPECT_EQ(find_fingers(finger_task(400, 5, true)).filler, 0);
}

TEST(Fingers, GapsAndKerfsAreCounted) {
  const double gap = 0.2e-3;
  const FingerSet s = find_fingers(finger_task(399.8, 5, true, 0.2, 3));
  EXPECT_EQ(s.filler, 0); // 80 steps less one gap
  EXPECT_NEAR(s.total, 0.3998, 1e-9);
  EXPECT_TRUE(s.not_made.empty());
  for (const FingerUse& use : s.uses) {
    const double set = set_width(s, use, gap);
    EXPECT_LE(set, use.width + 1e-9);
    EXPECT_GE(set, use.width - gap - 1e-9);
  }
  const double sum = std::accumulate(s.pieces.begin(), s.pieces.end(), 0.0);
  EXPECT_NEAR(s.stock, sum + static_cast<double>(s.pieces.size() - 1) * 3e-3, 1e-9);
}

TEST(Fingers, PiecesAtHandAreJudged) {
  const std::vector<double> pieces{0.010, 0.020, 0.050};
  const FingerSet s = judge_fingers(finger_task(80, 10, false), pieces);
  ASSERT_EQ(s.not_made.size(), 1u); // 10 20 30 50 60 70 80 can be made, 40 can not
  EXPECT_NEAR(s.not_made.front(), 0.040, 1e-12);
  EXPECT_TRUE(s.uses.at(3).fingers.empty());
  EXPECT_EQ(s.uses.at(4).fingers, std::vector<int>{2}); // the single 50 before any two
}

TEST(Fingers, NothingAtHandMakesNothing) {
  const FingerSet s = judge_fingers(finger_task(30, 10, false), {});
  EXPECT_EQ(s.not_made.size(), 3u);
  EXPECT_EQ(s.total, 0);
}

TEST(Fingers, LargeTasksTakeLessThanASecond) {
  const auto start = std::chrono::steady_clock::now();
  EXPECT_EQ(complete_partition(524287).size(), 19u);
  EXPECT_EQ(complete_partition(500000).size(), 19u);
  EXPECT_TRUE(find_fingers(finger_task(10000, 1, true)).not_made.empty());
  EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(1));
}

TEST(Fingers, MisuseIsNamed) {
  EXPECT_THROW(find_fingers(finger_task(0, 5, false)), std::invalid_argument);
  EXPECT_THROW(find_fingers(finger_task(100, 0, false)), std::invalid_argument);
  EXPECT_THROW(find_fingers(finger_task(100, -5, false)), std::invalid_argument);
  EXPECT_THROW(find_fingers(finger_task(4, 5, false)), std::invalid_argument);
  EXPECT_THROW(find_fingers(finger_task(100, 5, false, 5)), std::invalid_argument);
  EXPECT_THROW(find_fingers(finger_task(100, 5, false, 0, -1)), std::invalid_argument);
  EXPECT_THROW(find_fingers(finger_task(1e9, 1, false)), std::invalid_argument);
  EXPECT_THROW(judge_fingers(finger_task(100, 5, false), std::vector<double>(21, 0.01)), std::invalid_argument);
  EXPECT_THROW(judge_fingers(finger_task(100, 5, false), std::vector<double>{0.0}), std::invalid_argument);
  EXPECT_THROW(complete_partition(0), std::invalid_argument);
}

} // namespace bedbow
