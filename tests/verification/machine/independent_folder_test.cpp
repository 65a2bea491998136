// A machine of single beam bars solved by an independent program (Timoshenko beams with shear coefficient 5/6, springs
// of 1e11 N/mm where a joint is rigid, pads lumped at the stations). Agreement to expect: 1 % of each dial's largest
// component, 1.5 % of each bow.
#include "io/case/case_reader.h"
#include "mesh/machine/stud_spring.h"
#include "solver/analysis.h"
#include "solver/findings/bend_line.h"
#include "solver/findings/results.h"
#include "solver/model/steps.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

using verification::record;

constexpr const char* source = "independent beam program, folder-x";

/// The posts as that program had them: E A/L and 12 E I/L^3 of 20 mm on 120 mm, midway between the bars' centroids. A
/// plain stud that is thicker and longer has the same two springs with its nuts (L' + 1.8 d' on the full circle).
void take_its_posts(Machine& m) {
  const double d = 0.020, L = 0.120, E = 205e9, pi = std::numbers::pi;
  for (Post& p : m.posts) {
    p.diameter = 28.508375655e-3;
    p.free_length = 192.503168569e-3;
    p.at.z() = (-0.050 + 0.041) / 2;
    EXPECT_NEAR(stud_stiffness(p) / (E * pi / 4 * d * d / L), 1, 1e-9);
    EXPECT_NEAR(stud_shear_stiffness(p) / (12 * E * pi / 64 * std::pow(d, 4) / std::pow(L, 3)), 1, 1e-9);
  }
}

/// \param change what else that program did.
template <class Change> Findings folder_x(Change change) {
  const Registries registries = builtin_registries();
  Case c = read_case(BEDBOW_SOURCE_DIR "/tests/cases/folder-x.toml", registries);
  take_its_posts(c.machine);
  c.machine.sheet->friction = 0;
  change(c.machine);
  Findings f = analyse(c.machine, registries);
  EXPECT_EQ(f.status, Status::ok) << f.trouble;
  return f;
}

/// With both hinges locked, and the nose edge above the bend line, where the flange would have no room.
Findings folder_x() {
  return folder_x([](Machine& m) {
    m.nose.setback = 0;
    for (Hinge& h : m.hinges) h.end_float = 0;
  });
}

/// Step by step with the hinges as they are by default. That program had the push at the bend line, on the flange as
/// its lever, where the program has it at the nose's edge (theory/sheet.md).
std::vector<StepResult> one_floats() {
  const Registries registries = builtin_registries();
  Case c = read_case(BEDBOW_SOURCE_DIR "/tests/cases/folder-x.toml", registries);
  take_its_posts(c.machine);
  c.machine.sheet->friction = 0;
  const Model model = make_model(c.machine, registries);
  std::optional<SheetLoads> sheet = sheet_loads_of(c.machine, registries);
  sheet->edge = 0;
  std::vector<StepResult> out;
  for (const StepSolution& s : solve_steps(model, sheet).steps) {
    StepResult& r = out.emplace_back();
    r.name = s.name;
    fill_bend_line(model, s, r);
    fill_dials(model, s, r);
  }
  return out;
}

void expect_dial(const StepResult& step, const std::string& name, const Eigen::Vector3d& mm) {
  for (const DialResult& d : step.dials) {
    if (d.name != name) continue;
    const Eigen::Vector3d miss = d.movement * 1e3 - mm;
    record("", source, step.name + " dial " + name + ", miss over largest component",
           miss.cwiseAbs().maxCoeff() / mm.cwiseAbs().maxCoeff(), 0, 0.01);
    return;
  }
  ADD_FAILURE() << "no dial " << name;
}

TEST(IndependentFolder, ClampStep) {
  const Findings f = folder_x();
  ASSERT_GE(f.steps.size(), 2U);
  const StepResult& s = f.steps[0];
  expect_dial(s, "nose", {0.006126142, -0.021373192, -0.003509542});
  expect_dial(s, "edge", {0.006162523, -0.027225800, -0.072425212});
  expect_dial(s, "lip", {0.0000559222, -0.019473615, -0.081148197});
  record("", source, "clamp bow", s.bow.bow[1] * 1e3, 0.037586047, 0.015, "mm");
  record("", source, "bed bow", s.bow.bow[0] * 1e3, 0.031547057, 0.015, "mm");
}

TEST(IndependentFolder, BendStep) {
  const Findings f = folder_x();
  ASSERT_GE(f.steps.size(), 2U);
  const StepResult& s = f.steps[1];
  expect_dial(s, "nose", {0.003862206, 0.037074155, 0.005705727});
  expect_dial(s, "edge", {0.003839986, 0.079601349, -0.088511952});
  expect_dial(s, "lip", {-0.001372806, 0.058591101, -1.378048939});
  record("", source, "clamp bow", s.bow.bow[1] * 1e3, 0.052073166, 0.015, "mm");
  record("", source, "bed bow", s.bow.bow[0] * 1e3, 0.041929179, 0.015, "mm");
  record("", source, "apron bow", s.bow.bow[2] * 1e3, 0.536272746, 0.015, "mm");
  record("", source, "angle spread", s.bow.angle_spread * 180 / std::numbers::pi, 1.907901639, 0.015, "deg");
  ASSERT_TRUE(f.sheet);
  record("", source, "sheet moment", f.sheet->moment, 75.055534995, 1e-6, "N mm/mm");
}

// The hinges as they are by default: the first locates the apron along x, the second floats. Both used to lock it,
// which made an arch of it: 0.536 instead of 0.629 mm.
TEST(IndependentFolder, OneHingeFloats) {
  const std::vector<StepResult> steps = one_floats();
  ASSERT_GE(steps.size(), 2U);
  expect_dial(steps[0], "nose", {0.007641377, -0.005302318, -0.009116129});
  expect_dial(steps[0], "edge", {0.006126721, 0.003248636, -0.082133661});
  expect_dial(steps[0], "lip", {0.016331122, -0.000090741, 0.022252059});
  const StepResult& s = steps[1];
  expect_dial(s, "nose", {0.000608583, -0.007102563, 0.020933403});
  expect_dial(s, "edge", {0.004915121, 0.010756581, -0.069216396});
  expect_dial(s, "lip", {-0.046511226, 0.002007814, -1.676524102});
  record("", source, "clamp bow, a hinge floats", s.bow.bow[1] * 1e3, 0.056850170, 0.015, "mm");
  record("", source, "bed bow, a hinge floats", s.bow.bow[0] * 1e3, 0.033497673, 0.015, "mm");
  record("", source, "apron bow, a hinge floats", s.bow.bow[2] * 1e3, 0.628888459, 0.015, "mm");
  record("", source, "angle spread, a hinge floats", s.bow.angle_spread * 180 / std::numbers::pi, 2.257459989, 0.015,
         "deg");
}

TEST(IndependentFolder, CertificateHolds) {
  for (const StepResult& s : folder_x().steps) {
    EXPECT_LT(s.checks.equilibrium, 1e-9) << s.name;
    EXPECT_LT(s.checks.residual, 1e-9) << s.name;
    EXPECT_LT(s.checks.worst_closure, 1e-9) << s.name;
    EXPECT_LT(s.checks.worst_tension, 1e-9) << s.name;
  }
}

// Nothing ties the clamp along x: the free movement is named instead of a number made up.
TEST(IndependentFolder, LooseClampIsNamed) {
  const Registries registries = builtin_registries();
  Case c = read_case(BEDBOW_SOURCE_DIR "/tests/cases/folder-x.toml", registries);
  c.machine.posts.clear();
  for (Tie& t : c.machine.ties) t.holds = {false, true, true, true, false, true};
  const Findings f = analyse(c.machine, registries);
  EXPECT_EQ(f.status, Status::mechanism);
  EXPECT_NE(f.trouble.find("clamp can slide along x"), std::string::npos) << f.trouble;
}

} // namespace
} // namespace bedbow
