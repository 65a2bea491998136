// Verdicts as data: which reasons there are, in which order, and in which words.
#include "io/results/reason_text.h"
#include "solver/findings/results.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>

#include <limits>
#include <numbers>

namespace bedbow {
namespace {

constexpr double deg = std::numbers::pi / 180;

JointResult stressed(const std::string& name, Check check, JointKind kind = JointKind::post) {
  JointResult j;
  j.kind = kind;
  j.name = name;
  j.utilisation = check.utilisation();
  j.value = check.actual;
  j.checks = {std::move(check)};
  return j;
}

StepResult empty_step(const std::string& name) {
  StepResult s;
  s.name = name;
  s.bow.bow.fill(std::numeric_limits<double>::quiet_NaN());
  s.bow.angle_spread = std::numeric_limits<double>::quiet_NaN();
  return s;
}

// A stud at 365 times its yield left with "within the limits" and exit 0, since the case had no [limits].
TEST(Verdict, APartUsedOverTheWholeFailsWithoutAnyLimit) {
  StepResult s = empty_step("bend 0 deg");
  s.joints = {stressed("left", {"stud", 667e6, {660e6, "yield"}})};
  const Verdict v = judge(Machine{}, {s});
  EXPECT_FALSE(v.pass);
  ASSERT_EQ(v.reasons.size(), 1U);
  EXPECT_EQ(v.reasons[0].failure, Failure::breaks);
  EXPECT_EQ(reason_text(v.reasons[0], {}),
            "post left reaches a utilisation of 1.01 (stud) in step bend 0 deg, limit 1.00");
  s.joints = {stressed("left", {"stud", 659e6, {660e6, "yield"}})};
  EXPECT_TRUE(judge(Machine{}, {s}).pass);
}

// `utilisation = 1.5` in [limits] let a stud at 121 % of its yield leave with exit 0: a limit may ask for more reserve,
// not for less than none.
TEST(Verdict, TheCasesOwnLimitOfUtilisationCountsUpToTheWhole) {
  StepResult s = empty_step("bend 0 deg");
  s.joints = {stressed("left", {"stud", 528e6, {660e6, "yield"}})};
  Machine m;
  m.limits.utilisation = 0.67;
  EXPECT_FALSE(judge(m, {s}).pass);
  m.limits.utilisation = 1.5;
  s.joints = {stressed("left", {"stud", 800e6, {660e6, "yield"}})};
  EXPECT_FALSE(judge(m, {s}).pass);
  s.joints = {stressed("left", {"stud", 659e6, {660e6, "yield"}})};
  EXPECT_TRUE(judge(m, {s}).pass);
}

// The first line of a verdict was a bow of 0.26 mm, the fifth a stud that breaks.
TEST(Verdict, WhatBreaksStandsBeforeWhatYieldsBeforeWhatBows) {
  StepResult s = empty_step("bend 0 deg");
  s.bow.bow = {2e-3, 0, 0};
  s.bow.angle_spread = 3 * deg;
  s.displaced = {{Failure::moves, "apron", "rotation", 4 * deg, 2 * deg, Quantity::angle, "bend 0 deg"}};
  BarResult bar;
  bar.name = "bed.web";
  bar.stress = 300e6;
  bar.utilisation = 1.1;
  s.bars = {bar};
  s.joints = {stressed("left", {"proof load", 101e3, {100e3, "ISO 898-1"}, Quantity::force}),
              stressed("right", {"proof load", 120e3, {100e3, "ISO 898-1"}, Quantity::force}),
              stressed("tail", {"cam contact", 5e9, {1e9, "Hertz"}, Quantity::stress, Failure::wears}, JointKind::cam)};
  Machine m;
  m.limits.bow = 1e-3;
  m.limits.angle = 1 * deg;
  const std::vector<std::string> words = reason_text(judge(m, {s}).reasons, {});
  const std::vector<std::string> wanted{
      "post right reaches a utilisation of 1.20 (proof load) in step bend 0 deg, limit 1.00",
      "post left reaches a utilisation of 1.01 (proof load) in step bend 0 deg, limit 1.00",
      "stress in bed.web reaches a utilisation of 1.10 (yield) in step bend 0 deg, limit 1.00",
      "cam tail reaches a utilisation of 5.00 (cam contact) in step bend 0 deg, limit 1.00",
      "apron turns by 4.000 deg in step bend 0 deg, limit 2.000 deg",
      "bend angle varies by 3.000 deg in step bend 0 deg, limit 1.000 deg",
      "bed bows 2.000 mm in step bend 0 deg, limit 1.000 mm"};
  EXPECT_EQ(words, wanted);
}

// 0.31 mm where the case speaks of inches says nothing to who reads it.
TEST(Verdict, IsWordedInTheUnitsOfTheCase) {
  const Reason bow{Failure::bows, "clamp", "bow", 0.254e-3, 0.127e-3, Quantity::length, "clamp"};
  const OutputUnits inches{{"in", 0.0254}, {"lbf", 4.4482216152605}, {"ksi", 6.894757293168e6}};
  EXPECT_EQ(reason_text(bow, inches), "clamp bows 0.0100 in in step clamped, limit 0.0050 in");
}

// Half the load that buckles is worse than nine tenths of it: the limit is a least value.
TEST(Verdict, BucklingIsWorseTheLessItTakes) {
  std::vector<Reason> r{{Failure::breaks, "post left", "stud", 2, 1},
                        {Failure::breaks, "clamp rolls", "buckling", 0.5, 3, Quantity::ratio, "bend 0 deg"}};
  r[1].least = true;
  EXPECT_DOUBLE_EQ(r[1].over(), 6);
  sort_reasons(r);
  EXPECT_EQ(reason_text(r[0], {}), "buckles at 0.50 times the load of step bend 0 deg (clamp rolls), limit 3.00 times");
}

// Shims that make every bend step good stand there while nothing is bent yet.
TEST(Verdict, TheClampedStepIsNotJudgedForAngleAndApron) {
  StepResult clamp = empty_step("clamp");
  clamp.bow.bow[static_cast<std::size_t>(BodyKind::apron)] = 5e-3;
  clamp.bow.angle_spread = 9 * deg;
  Machine m;
  m.limits.bow = 1e-3;
  m.limits.angle = 1 * deg;
  EXPECT_TRUE(judge(m, {clamp, empty_step("bend 0 deg")}).pass);
  clamp.bow.bow[static_cast<std::size_t>(BodyKind::clamp)] = 2e-3; // what it does itself still counts
  EXPECT_FALSE(judge(m, {clamp, empty_step("bend 0 deg")}).pass);
  clamp.name = "bend 0 deg";
  EXPECT_EQ(judge(m, {clamp}).reasons.size(), 3U);
}

} // namespace
} // namespace bedbow
