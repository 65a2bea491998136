#include "io/case/case_reader.h"
#include "mesh/piece/si.h"
#include "solver/model/steps.h"

#include <gtest/gtest.h>

#include <numbers>

namespace bedbow {
namespace {

/// The hive-lid folder, coarse.
Machine coarse_folder() {
  Machine m = read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", builtin_registries()).machine;
  m.solve.element_size = 0.06;
  return m;
}

StepsOutcome steps_of(const Machine& m) {
  const Registries r = builtin_registries();
  const Model model = make_model(m, r);
  return solve_steps(model, sheet_loads_of(m, r));
}

TEST(Steps, DefaultBendAnglesAreZeroHalfAndWanted) {
  Machine m = coarse_folder();
  m.solve.angles.reset();
  EXPECT_EQ(bend_angles(m), (std::vector<double>{0, std::numbers::pi / 4, std::numbers::pi / 2}));
  m.solve.angles = {0.3, 0.1};
  EXPECT_EQ(bend_angles(m), (std::vector<double>{0.3, 0.1})) << "in the order of the case";
  m.sheet.reset();
  EXPECT_TRUE(bend_angles(m).empty());
}

TEST(Steps, ClampFirstThenBendAtEachAngle) {
  Machine m = coarse_folder();
  m.solve.angles = {0, 37.5 * si::degree, std::numbers::pi / 2};
  const StepsOutcome out = steps_of(m);
  ASSERT_EQ(out.status, Status::ok) << out.trouble;
  ASSERT_EQ(out.steps.size(), 4U);
  const char* const names[] = {"clamp", "bend 0 deg", "bend 37.5 deg", "bend 90 deg"};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(out.steps[i].name, names[i]);
    EXPECT_EQ(out.steps[i].bending, i > 0);
    EXPECT_DOUBLE_EQ(out.steps[i].angle, i == 0 ? 0 : (*m.solve.angles)[i - 1]);
  }
}

// While clamping, preloaded posts carry exactly their preload; bending stretches them further by the posts' springs.
TEST(Steps, PreloadIsTheForceOfTheClampedState) {
  const Machine m = coarse_folder();
  const Registries r = builtin_registries();
  const Model model = make_model(m, r);
  const StepsOutcome out = solve_steps(model, sheet_loads_of(m, r));
  ASSERT_EQ(out.status, Status::ok) << out.trouble;
  int posts = 0;
  const StepSolution &clamp = out.steps.front(), &bent = out.steps.back();
  for (std::size_t i = 0; i < clamp.rows.size(); ++i) {
    const Joint& j = model.mesh.joints[static_cast<std::size_t>(clamp.rows[i].joint)];
    if (j.kind != JointKind::post || clamp.rows[i].direction != uz) continue;
    ++posts;
    const auto k = static_cast<Eigen::Index>(i);
    EXPECT_DOUBLE_EQ(clamp.force[k], *m.posts.at(static_cast<std::size_t>(j.index)).preload) << j.name;
    const double further = (bent.elongation[k] - clamp.elongation[k]) * j.stiffness[uz];
    EXPECT_NEAR(bent.force[k] - clamp.force[k], further, 1e-6 * bent.force[k]) << j.name;
  }
  EXPECT_EQ(posts, static_cast<int>(m.posts.size()));
}

TEST(Steps, OneStepWithoutASheet) {
  Machine m = coarse_folder();
  m.sheet.reset();
  m.body(BodyKind::clamp) = {};
  m.body(BodyKind::apron) = {};
  m.posts.clear();
  m.cams.clear();
  m.hinges.clear();
  m.handles.clear();
  m.ties.clear();
  m.dials.clear();
  m.loads.clear();
  std::erase_if(m.screws, [](const Screws& s) { return s.joins[0].body != BodyKind::bed; });
  m.gravity = true;
  const StepsOutcome out = steps_of(m);
  ASSERT_EQ(out.status, Status::ok) << out.trouble;
  ASSERT_EQ(out.steps.size(), 1U);
  EXPECT_EQ(out.steps[0].name, "load");
  EXPECT_FALSE(out.steps[0].bending);
  m.supports.clear();
  const StepsOutcome loose = steps_of(m);
  EXPECT_EQ(loose.status, Status::mechanism);
  EXPECT_NE(loose.trouble.find("bed can slide along"), std::string::npos) << loose.trouble;
  EXPECT_TRUE(loose.steps.empty());
}

} // namespace
} // namespace bedbow
