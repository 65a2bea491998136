// `posts` once placed studs wherever the clamp bowed least: on an eccentric, or half off the end of the bar.
#include "io/case/case_reader.h"
#include "solver/study/post_layout.h"

#include <gtest/gtest.h>

#include <array>

namespace bedbow {

namespace {

const Registries& all_registries() {
  static const Registries r = builtin_registries();
  return r;
}

Machine coarse_folder() {
  Machine m = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", all_registries()).machine;
  m.solve.element_size = 0.06;
  return m;
}

TEST(PostLayout, AStudOnAnEccentricIsNoLayout) {
  Machine m = coarse_folder();
  for (Cam& c : m.cams) c.radius = 0.05; // from y = 62 mm, in line with the studs at 70
  const PostLayout on = judge_posts(m, all_registries(), std::array{0.06, 0.84});
  EXPECT_FALSE(on.solved);
  ASSERT_FALSE(on.faults.empty());
  EXPECT_EQ(on.faults.front().kind, FaultKind::pierces);
  const PostLayout beside = judge_posts(m, all_registries(), std::array{0.1, 0.8});
  EXPECT_TRUE(beside.solved);
  EXPECT_GT(on.rank(PostGoal::bow), beside.rank(PostGoal::bow));
}

// What the drawn posts have already is for `check` to say: here their edge distance across.
TEST(PostLayout, FaultsOfTheDrawnPostsAreNotNew) {
  Machine m = coarse_folder();
  m.sheet->moment_law = "rigid-plastic"; // so far back two studs hold no more
  for (Post& p : m.posts) p.at.y() = 0.097;
  const PostLayout layout = judge_posts(m, all_registries(), std::array{0.3, 0.6});
  EXPECT_TRUE(layout.faults.empty());
  EXPECT_TRUE(layout.solved);
}

TEST(PostLayout, RoomEndsWhereAHoleNeedsMetal) {
  const auto [from, to] = room_for_posts(coarse_folder());
  EXPECT_NEAR(from, 1.2 * 0.022, 1e-12); // EN 1993-1-8 Table 3.3, ISO 273 medium hole of an M20
  EXPECT_NEAR(to, 0.9 - 1.2 * 0.022, 1e-12);
}

} // namespace

} // namespace bedbow
