// The held sheet passed no friction: at 90 deg all of the push went through the studs, though the nose presses on the
// sheet with more than it needs to hold it.
#include "solver/analysis.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

constexpr const char* coulomb = "Coulomb friction and statics of the sheet";

/// The hive lid with a coefficient of its sheet's friction, its flats of one model.
Findings hive_lid(double friction, BarModel model = BarModel::beam) {
  Machine m = machine_of(project_file("cases/hive-lid/case.toml"));
  for (Body& body : m.bodies)
    for (Bar& bar : body.bars) bar.model = model;
  m.sheet->friction = friction;
  AnalysisOptions options;
  options.slip_bounds = true;
  Findings f = analyse(m, builtin_registries(), options);
  EXPECT_EQ(f.status, Status::ok) << f.trouble;
  return f;
}

/// Sum of what a step's contacts of that kind carry along their normal [N].
double sum_of(const StepResult& s, const std::string& what) {
  double sum = 0;
  for (const ContactResult& c : s.contacts)
    if (c.what == what)
      for (const double f : c.force) sum += f;
  return sum;
}

void expect_between_bounds(const Findings& f) {
  ASSERT_TRUE(f.friction_bounds);
  ASSERT_EQ(f.friction_bounds->sliding.status, Status::ok) << f.friction_bounds->sliding.trouble;
  ASSERT_EQ(f.friction_bounds->sticking.status, Status::ok) << f.friction_bounds->sticking.trouble;
  const std::size_t last = f.steps.size() - 1; // 90 deg
  const double sliding = std::abs(f.friction_bounds->sliding.steps.at(last).bow.angle_mean);
  const double sticking = std::abs(f.friction_bounds->sticking.steps.at(last).bow.angle_mean);
  const double solved = std::abs(f.steps[last].bow.angle_mean);
  EXPECT_LT(solved, sliding);
  EXPECT_GE(solved, sticking * (1 - 1e-9));
  EXPECT_LT(sticking, 0.9 * sliding);
  for (const StepResult& s : f.steps) {
    if (!s.hold) continue;
    EXPECT_TRUE(s.hold->settled) << s.name;
    EXPECT_LT(s.checks.equilibrium, 1e-9) << s.name;
    EXPECT_LT(s.checks.residual, 1e-9) << s.name;
  }
}

TEST(SheetFriction, LiesBetweenItsBounds) {
  expect_between_bounds(hive_lid(0.15));
}

// Strips take the sheet's push and grip on lines across their width, friction on the middle of the land.
TEST(SheetFriction, OfStripsToo) {
  const Findings f = hive_lid(0.15, BarModel::strip);
  expect_between_bounds(f);
  const StepResult& s = f.steps.back();
  ASSERT_TRUE(s.hold);
  record("", coulomb, "needs at 90 deg, hive lid of strips", s.hold->needs, f.sheet->moment / 0.025 * 0.6, 1e-9, "N");
  EXPECT_GT(s.hold->carried, 0);
}

// At 90 deg the push is horizontal, m/a per length; nose and bed each press with the pads' force and m/g per length.
TEST(SheetFriction, WhatTheSheetsHoldNeedsAndHas) {
  const Findings f = hive_lid(0.15);
  const StepResult& s = f.steps.back();
  ASSERT_TRUE(s.hold);
  const double m = f.sheet->moment, pads = sum_of(s, "nose"); // N mm/mm is N m/m
  record("", coulomb, "needs at 90 deg, hive lid", s.hold->needs, m / 0.025 * 0.6, 1e-9, "N");
  record("", coulomb, "has at 90 deg, hive lid", s.hold->has, 0.15 * 2 * (pads + m / 0.015 * 0.6), 1e-9, "N");
  EXPECT_EQ(s.hold->slips(), s.hold->needs > s.hold->has);
  record("", coulomb, "carried, against the contacts' forces", std::abs(s.hold->carried),
         std::abs(sum_of(s, "friction")), 1e-9, "N");
}

// So little friction slides everywhere: then the bed takes just the coefficient times what presses on it.
TEST(SheetFriction, SlidingWithItsFullForce) {
  const Findings f = hive_lid(0.005);
  const StepResult& s = f.steps.back();
  ASSERT_TRUE(s.hold);
  record("", coulomb, "friction on the bed over mu N, all sliding", s.hold->carried / (s.hold->has / 2), 1, 1e-6);
}

TEST(SheetFriction, NoCoefficientIsSliding) {
  const Findings f = hive_lid(0);
  ASSERT_TRUE(f.friction_bounds);
  for (std::size_t i = 0; i < f.steps.size(); ++i) {
    const BowResult& bound = f.friction_bounds->sliding.steps.at(i).bow;
    EXPECT_EQ(f.steps[i].bow.angle_mean, bound.angle_mean);
    if (f.steps[i].hold) {
      EXPECT_EQ(f.steps[i].hold->carried, 0);
    }
  }
}

} // namespace
} // namespace bedbow::verification
