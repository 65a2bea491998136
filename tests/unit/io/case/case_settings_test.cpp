#include "tests/unit/io/case/small_cases.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

using test::bench;
using test::expect_error;

TEST(CaseSettings, EveryKey) {
  const Case c = test::read(bench(R"([limits]
bow = "0.01 in"
angle = "0.5 deg"
utilisation = 0.67
buckling = 2.5
nose_opening = "0.05 mm"
[solve]
dimension = 2
element_size = "1 in"
angles = ["0 deg", "45 deg"]
modes = 6
buckling = 2
buckling_step = "load"
mass = "lumped"
linear_solver = "band"
[output]
length = "in"
force = "lbf"
stress = "ksi"
)"));
  const Limits& l = c.machine.limits;
  EXPECT_DOUBLE_EQ(l.bow.value(), 254e-6);
  EXPECT_NEAR(l.angle.value(), std::numbers::pi / 360, 1e-15);
  EXPECT_DOUBLE_EQ(l.utilisation.value(), 0.67);
  EXPECT_DOUBLE_EQ(l.buckling.value(), 2.5);
  EXPECT_DOUBLE_EQ(l.nose_opening.value(), 50e-6);
  const SolveSettings& s = c.machine.solve;
  EXPECT_EQ(s.dimension, 2);
  EXPECT_DOUBLE_EQ(s.element_size, 0.0254);
  ASSERT_TRUE(s.angles);
  ASSERT_EQ(s.angles->size(), 2U);
  EXPECT_NEAR((*s.angles)[1], std::numbers::pi / 4, 1e-15);
  EXPECT_EQ(s.modes, 6);
  EXPECT_EQ(s.buckling, 2);
  EXPECT_EQ(s.buckling_step, "load");
  EXPECT_TRUE(s.lumped_mass);
  EXPECT_EQ(s.linear_solver, "band");
  EXPECT_EQ(c.output.length.name, "in");
  EXPECT_DOUBLE_EQ(c.output.length.size, 0.0254);
  EXPECT_NEAR(c.output.force.size, 4.4482216152605, 1e-12);
  EXPECT_NEAR(c.output.stress.size, 6.894757293168e6, 1e-3); // NIST SP 811
}

TEST(CaseSettings, Defaults) {
  const Case c = test::read(bench());
  const Limits& l = c.machine.limits;
  EXPECT_FALSE(l.bow || l.angle || l.utilisation || l.buckling || l.nose_opening);
  const SolveSettings& s = c.machine.solve;
  EXPECT_EQ(s.dimension, 3);
  EXPECT_DOUBLE_EQ(s.element_size, 0.03) << "its bar is a rectangle";
  EXPECT_FALSE(s.angles);
  EXPECT_EQ(s.modes + s.buckling, 0);
  EXPECT_FALSE(s.lumped_mass);
  EXPECT_TRUE(s.linear_solver.empty() && s.buckling_step.empty());
  EXPECT_EQ(c.output.length.name, "mm");
  EXPECT_EQ(c.output.force.name, "kN");
  EXPECT_EQ(c.output.stress.name, "MPa");
  EXPECT_TRUE(c.plugins.empty());
}

TEST(CaseSettings, WrongValues) {
  expect_error(bench(), "[limits]\nbow = \"-1 mm\"\n", 2, "limits.bow", {"must be greater than zero"});
  expect_error(bench(), "[limits]\nutilisation = \"67 %\"\n", 2, "limits.utilisation", {"expected a bare number"});
  expect_error(bench(), "[solve]\ndimension = 4\n", 2, "solve.dimension", {"4 is not between 2 and 3"});
  expect_error(bench(), "[solve]\nmass = \"heavy\"\n", 2, "solve.mass", {"\"heavy\" is not one of consistent, lumped"});
  expect_error(bench(), "[solve]\nlinear_solver = \"bend\"\n", 2, "solve.linear_solver",
               {"unknown linear solver \"bend\"", "band"});
  expect_error(bench(), "[solve]\nelements = 3\n", 2, "solve.elements", {"unknown key \"elements\" in [solve]"});
  expect_error(bench(), "[output]\nforce = \"mm\"\n", 2, "output.force", {"\"mm\" is not a unit of force"});
}

} // namespace
} // namespace bedbow
