#include "io/results/result_json.h"
#include "io/results/result_tables.h"
#include "solver/findings/part_peaks.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace bedbow {
namespace {

JointResult post(const std::string& name, double force, double bending) {
  JointResult j;
  j.name = name;
  j.value = force;
  j.at = {0.04, 0.07, 0};
  j.checks = {{"proof load", force, {100e3, "x"}, Quantity::force}, {"stud", bending, {640e6, "x"}}};
  j.utilisation = worst_check(j.checks)->utilisation();
  return j;
}

Findings two_steps() {
  Findings f;
  f.steps.resize(2);
  f.steps[0].name = "clamp";
  f.steps[1].name = "bend 0 deg";
  f.steps[0].joints = {post("left", 8487, 100e6), post("right", 8487 * (1 + 1e-12), 100e6)};
  f.steps[1].joints = {post("left", 5229, 288e6), post("right", 5229, 288e6 * (1 - 1e-12))};
  return f;
}

// "at most 5.229 kN" of a post was its force in the step with the highest utilisation; its greatest pull is 8.487 kN.
TEST(PartPeaks, GreatestForceAndHighestUtilisationAreOfTheirOwnSteps) {
  const std::vector<PartPeaks> p = part_peaks(two_steps().steps);
  ASSERT_EQ(p.size(), 2U);
  EXPECT_EQ(p[0].label(), "post left");
  EXPECT_EQ(p[0].load.value, 8487);
  EXPECT_EQ(p[0].load.step, "clamp");
  EXPECT_DOUBLE_EQ(p[0].use.value, 288.0 / 640);
  EXPECT_EQ(p[0].use.step, "bend 0 deg");
  EXPECT_EQ(p[0].check.what, "stud");
}

// What is equal by symmetry differs in the last digits; it had other words left than right.
TEST(PartPeaks, SymmetricPartsHaveTheSameSteps) {
  const std::vector<PartPeaks> p = part_peaks(two_steps().steps);
  EXPECT_EQ(p[0].load.step, p[1].load.step);
  EXPECT_EQ(p[0].use.step, p[1].use.step);
  EXPECT_EQ(p[0].check.what, p[1].check.what);
}

TEST(PartPeaks, ThePrintedTableHasBoth) {
  const std::string text = load_table(two_steps(), {}).render(Style(false));
  const std::size_t line = text.find("post left");
  const std::string row = text.substr(line, text.find('\n', line) - line);
  for (const char* part : {"8.487 kN", "clamped", "45 %", "stud 288.0 of 640.0 MPa", "40 mm", "bend 0 deg"})
    EXPECT_NE(row.find(part), std::string::npos) << part << " in " << row;
}

TEST(PartPeaks, ResultsJsonHasBoth) {
  const auto j = result_json(two_steps(), {}).at("joints").at(0);
  EXPECT_EQ(j.at("kind"), "post");
  EXPECT_EQ(j.at("name"), "left");
  EXPECT_EQ(j.at("force_N"), 8487);
  EXPECT_EQ(j.at("force_step"), "clamp");
  EXPECT_EQ(j.at("use"), 0.45);
  EXPECT_EQ(j.at("check"), "stud");
  EXPECT_EQ(j.at("actual_MPa"), 288);
  EXPECT_EQ(j.at("allowable_MPa"), 640);
  EXPECT_EQ(j.at("use_step"), "bend 0 deg");
}

// Where nothing is known of what a joint may bear, nothing governs.
TEST(PartPeaks, UnknownStrengthHasNoCheck) {
  Findings f = two_steps();
  for (StepResult& s : f.steps)
    for (JointResult& j : s.joints) {
      j.checks.clear();
      j.utilisation = 0;
    }
  const auto j = result_json(f, {}).at("joints").at(0);
  EXPECT_EQ(j.at("use"), 0);
  EXPECT_TRUE(j.at("check").is_null());
  EXPECT_TRUE(j.at("use_step").is_null());
}

} // namespace
} // namespace bedbow
