// The best posts within a case's limits, against trying all spacings of two posts.
#include "solver/study/post_layout.h"

#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

Machine hive_lid(const std::string& utilisation) {
  std::string text = project_file("cases/hive-lid/case.toml");
  text = replaced(text, "[solve]\n", "[solve]\nelement_size = \"60 mm\"\n");
  return machine_of(replaced(text, "utilisation = 0.67", "utilisation = " + utilisation));
}

PostTask two_posts() {
  PostTask task;
  task.count = 2;
  task.from = 0.04;
  task.to = 0.86;
  return task;
}

// Posts that crowd together spread the angle least, and bend their studs most: the limit has to push them apart, as far
// as it must and no further.
TEST(PostLimits, KeptAtTheLeastCost) {
  const Registries r = builtin_registries();
  const Machine m = hive_lid("0.5");
  const PostTask task = two_posts();
  double best = INFINITY, all = INFINITY;
  for (double spacing = 0.06; spacing <= 0.82; spacing += 0.004) {
    const PostLayout l = judge_posts(m, r, even_posts(task, spacing));
    all = std::min(all, l.angle_spread);
    if (l.utilisation <= 0.5 && l.angle_spread < best) best = l.angle_spread;
  }
  ASSERT_LT(all, 0.9 * best); // the limit does count
  const PostLayout found = place_posts(m, r, task);
  EXPECT_TRUE(found.pass) << found.reasons.size() << " reasons";
  EXPECT_LE(found.utilisation, 0.5);
  EXPECT_EQ(found.excess, 0);
  // Spread changes by some 0.5 % from one tried spacing to the next.
  EXPECT_LE(found.angle_spread, 1.001 * best);
  EXPECT_GE(found.angle_spread, 0.985 * best);
}

TEST(PostLimits, WhereNoneKeepsThemTheLeastExcess) {
  const Registries r = builtin_registries();
  const Machine m = hive_lid("0.3");
  const PostTask task = two_posts();
  double least = INFINITY;
  for (double spacing = 0.06; spacing <= 0.82; spacing += 0.004)
    least = std::min(least, judge_posts(m, r, even_posts(task, spacing)).utilisation);
  ASSERT_GT(least, 0.3);
  const PostLayout found = place_posts(m, r, task);
  EXPECT_FALSE(found.pass);
  EXPECT_NEAR(found.excess, found.utilisation / 0.3 - 1, 1e-12);
  EXPECT_LE(found.utilisation, 1.001 * least);
}

} // namespace
} // namespace bedbow::verification
