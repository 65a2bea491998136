#include "solver/study/finger_set.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace bedbow::verification {

TEST(CountingBound, FewestFingers) {
  const char* source =
      "2^m - 1 sets of m pieces must cover N widths; exhaustive search agrees for N = 1-8, 10, 12, 15, 16";
  const std::pair<int, int> rows[] = {{7, 3}, {8, 4}, {15, 4}, {16, 5}, {31, 5}, {32, 6}, {63, 6}, {100, 7}};
  for (const auto& [N, pieces] : rows) {
    FingerTask task{N * 0.005, 0.005};
    record("L1", source, "pieces for " + std::to_string(N) + " steps, total free",
           static_cast<double>(find_fingers(task).pieces.size()), pieces, 0);
    task.fill = true;
    record("L1", source, "pieces for " + std::to_string(N) + " steps, filling",
           static_cast<double>(find_fingers(task).pieces.size()), pieces, 0);
  }
}

TEST(CountingBound, SetsThatSumToTheWhole) {
  const std::pair<int, std::vector<int>> rows[] = {{12, {1, 2, 3, 6}}, {16, {1, 1, 2, 4, 8}}, {10, {1, 1, 3, 5}}};
  for (const auto& [N, expected] : rows) {
    const std::vector<int> found = complete_partition(N);
    ASSERT_EQ(found.size(), expected.size());
    for (std::size_t i = 0; i < found.size(); ++i)
      record("L2", "optimal sets by exhaustive search", std::to_string(N) + " steps, piece " + std::to_string(i + 1),
             found[i], expected[i], 0);
  }
}

} // namespace bedbow::verification
