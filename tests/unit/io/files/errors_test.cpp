#include "io/files/errors.h"

#include <gtest/gtest.h>

namespace bedbow {

TEST(Problem, ReadsLikeACompilersMessage) {
  const Problem p{Severity::error, {12, 8}, "bed.length", "no unit"};
  EXPECT_EQ(to_string(p, "case.toml"), "case.toml:12:8: error: bed.length: no unit");
}

TEST(Problem, LeavesOutWhatIsMissing) {
  EXPECT_EQ(to_string({Severity::warning, {}, "", "odd"}, "x"), "x: warning: odd");
}

TEST(Problem, CannotSteerTheTerminal) {
  EXPECT_EQ(to_string({Severity::error, {1, 1}, "k\033[2J", "t\n"}, "f"), "f:1:1: error: k?[2J: t?");
}

TEST(Problem, AreSortedByPlaceAndKeptInOrderThere) {
  std::vector<Problem> all{{Severity::error, {2, 1}, "c", ""},
                           {Severity::error, {1, 9}, "b", "first"},
                           {Severity::error, {1, 9}, "a", "second"},
                           {Severity::error, {2, 1}, "c", ""}};
  sort_by_place(all);
  ASSERT_EQ(all.size(), 3U);
  EXPECT_EQ(all[0].key, "b");
  EXPECT_EQ(all[1].key, "a");
  EXPECT_EQ(all[2].key, "c");
}

TEST(Problem, WarningsAloneAreNoError) {
  EXPECT_FALSE(any_error({{Severity::warning, {}, "", ""}}));
  EXPECT_TRUE(any_error({{Severity::warning, {}, "", ""}, {Severity::error, {}, "", ""}}));
}

TEST(CaseError, SaysAllProblemsAtOnce) {
  const CaseError e("f", {{Severity::error, {1, 2}, "a", "x"}, {Severity::error, {3, 4}, "b", "y"}});
  EXPECT_STREQ(e.what(), "f:1:2: error: a: x\nf:3:4: error: b: y");
  EXPECT_EQ(e.problems().size(), 2U);
}

} // namespace bedbow
