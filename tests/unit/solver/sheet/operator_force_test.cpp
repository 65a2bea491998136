#include "solver/sheet/operator_force.h"

#include <gtest/gtest.h>

#include <set>

namespace bedbow {

TEST(Effort, EveryLimitHasItsOwnKeyAndASource) {
  std::set<std::string> keys;
  for (const EffortLimit& l : effort_limits()) {
    EXPECT_TRUE(keys.insert(l.key).second) << l.key;
    EXPECT_FALSE(l.source.empty());
    EXPECT_EQ(find_effort_limit(l.key), &l);
  }
  EXPECT_EQ(find_effort_limit("arm sideways"), nullptr);
}

TEST(Effort, ForceAgainstLimit) {
  EXPECT_NEAR(check_effort(37.5, "arm down").utilisation(), 0.5, 1e-12);
  EXPECT_NEAR(check_effort(-37.5, "arm down").utilisation(), 0.5, 1e-12);
  EXPECT_EQ(check_effort(37.5, "arm down", 100).allowed.source, "case");
  try {
    (void)check_effort(1, "arm sideways");
    FAIL();
  } catch (const std::invalid_argument& e) {
    EXPECT_NE(std::string(e.what()).find("available: power grip; arm up"), std::string::npos);
  }
}

} // namespace bedbow
