#include "mesh/machine/limits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace bedbow {

TEST(Limits, EachHasAKeyOfItsOwn) {
  std::set<std::string_view> keys;
  for (const LimitKind& kind : limit_kinds) keys.insert(kind.key);
  EXPECT_EQ(keys.size(), limit_kinds.size());
}

TEST(Limits, UsualOneWhereOmitted) {
  Limits limits;
  EXPECT_EQ(limit_or_usual(limits, &Limits::utilisation), 1);
  EXPECT_EQ(limit_or_usual(limits, &Limits::buckling), 3);
  EXPECT_TRUE(std::isnan(limit_or_usual(limits, &Limits::bow)));
  limits.buckling = 2;
  EXPECT_EQ(limit_or_usual(limits, &Limits::buckling), 2);
  EXPECT_FALSE(any_limit_of_steps(limits)) << "buckling is judged once, after the steps";
  limits.nose_opening = 1e-4;
  EXPECT_TRUE(any_limit_of_steps(limits));
}

} // namespace bedbow
