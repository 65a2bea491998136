// A nose of loose fingers: each a short cantilever, free of its neighbours.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace bedbow::verification {
namespace {

// Clamp and bed of rock, held fast; fingers of E = 210 GPa, nu = 0, 40 wide, 10 thick, reaching 60 mm to the nose edge.
// At 0 deg the flange pushes the nose up, off the bed: the finger carries its load alone.
std::string rock_clamp(const std::string& model, const std::string& widths, const std::string& more = "") {
  return R"(
title = "fingers on rock"
[material.rock]
E = "9e5 GPa"
nu = 0
[material.finger]
E = "210 GPa"
nu = 0
[material.blank]
E = "210 GPa"
nu = 0.3
yield = "200 MPa"
[sheet]
material = "blank"
thickness = "1 mm"
width = "40 mm"
centre = "100 mm"
flange = "25 mm"
inside_radius = "1 mm"
angle = "90 deg"
grip = "15 mm"
friction = 0
[bed]
length = "200 mm"
material = "rock"
bar = [ { name = "rock", shape = "rectangle", width = "100 mm", height = "100 mm", at = ["50 mm", "-50 mm"] } ]
[clamp]
length = "200 mm"
material = "rock"
bar = [ { name = "rock", shape = "rectangle", width = "80 mm", height = "20 mm", at = ["102 mm", "11 mm"], model = ")" +
         model + R"(" } ]
nose = { land = "15 mm" }
fingers = { widths = [)" +
         widths + R"(], start = "40 mm", reach = "60 mm", thickness = "10 mm", material = "finger")" + more + R"( }
[[support]]
bar = "bed.rock"
x = "100 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[tie]]
joins = ["clamp.rock", "ground"]
x = "100 mm"
holds = ["x", "y", "z", "rx", "ry", "rz"]
[solve]
element_size = "10 mm"
angles = ["0 deg"]
)";
}

constexpr double finger_E = 210e9, t = 0.01, reach = 0.06;

constexpr double setback = 0.002; // thickness and inside radius
constexpr double flange = 0.025;

/// What the sheet puts on the nose's edge per length: push and grip [N/m]. At 0 deg the push of the apron holds the
/// moment on flange and set-back.
double edge_load(const Findings& f) {
  return f.sheet ? f.sheet->moment / (flange + setback) + f.sheet->grip : 0;
}

/// Rise of the nose edge under a force there [N/m].
double edge_rise(double q) {
  constexpr double EI = finger_E * t * t * t / 12;
  return q * std::pow(reach, 3) / (3 * EI) + q * reach / (finger_E / 2 * t * 5 / 6);
}

/// What a root of stiffness k [N m/rad] adds for a finger 40 mm wide.
double by_root(double q, double k) {
  return q * reach * 0.04 * reach / k;
}

double rise(const Findings& f) {
  return f.steps.size() < 2 ? 0 : f.steps[1].bend_line.nose_z[f.steps[1].bend_line.nose_z.size() / 2];
}

TEST(FingerNose, OneFingerIsACantilever) {
  for (const std::string model : {"beam", "plate"}) {
    const Findings f = solved(rock_clamp(model, "\"40 mm\", \"40 mm\", \"40 mm\""));
    record("A5", "cantilever under a force, tquigley.com/T302.htm", "rise of the edge of one finger, " + model,
           rise(f) * 1e3, edge_rise(edge_load(f)) * 1e3, model == "beam" ? 1e-4 : 0.01, "mm");
  }
}

// A root that gives: the edge rises by q b reach^2 / k more.
TEST(FingerNose, RootThatGives) {
  for (const std::string model : {"beam", "plate"}) {
    const Findings f =
        solved(rock_clamp(model, "\"40 mm\", \"40 mm\", \"40 mm\"", ", root_stiffness = \"2000 N*m/rad\""));
    record("", "derived: cantilever on a hinge with a spring", "rise with a root of 2 kN m/rad, " + model,
           rise(f) * 1e3, (edge_rise(edge_load(f)) + by_root(edge_load(f), 2000)) * 1e3, model == "beam" ? 1e-4 : 0.01,
           "mm");
  }
}

// The sheet lies under the middle one of three: the others carry nothing.
TEST(FingerNose, BesideTheSheetNothing) {
  const Findings f = solved(rock_clamp("beam", "\"40 mm\", \"40 mm\", \"40 mm\""));
  ASSERT_EQ(f.steps.size(), 2U);
  std::array<double, 3> shear{};
  for (const BarField& b : f.steps[1].fields.bars)
    for (int i = 0; i < 3; ++i)
      if (b.name == "clamp.finger " + std::to_string(i + 1))
        for (const auto& pair : b.forces)
          for (const SectionForces& s : pair) shear[i] = std::max(shear[i], std::abs(s.Vz));
  EXPECT_NEAR(shear[1], edge_load(f) * 0.04, 1e-6 * shear[1]);
  EXPECT_LT(shear[0], 1e-9 * shear[1]);
  EXPECT_LT(shear[2], 1e-9 * shear[1]);
}

// Fingers of rock ride on the clamp as a solid nose does.
TEST(FingerNose, RigidFingersAreASolidNose) {
  std::string fingered = project_file("tests/cases/folder-x.toml");
  const std::size_t size = fingered.find("element_size = ");
  fingered.replace(size, fingered.find('\n', size) - size, "element_size = \"4.5 mm\""); // pads as close under both
  const Findings solid = solved(fingered);
  const std::string nose = "nose = {";
  fingered.insert(fingered.find(nose),
                  "fingers = { width = \"9 mm\", count = 50, start = \"135 mm\", reach = \"15 mm\", "
                  "thickness = \"80 mm\", material = \"rock\" }\n");
  fingered.insert(fingered.find("[sheet]"), R"([material.rock]
E = "9e5 GPa"
nu = 0
)");
  const Findings f = solved(fingered);
  ASSERT_EQ(f.steps.size(), solid.steps.size());
  for (std::size_t i = 0; i < f.steps.size(); ++i)
    record("", "the same folder with a solid nose", f.steps[i].name + ": clamp bow with 50 rigid fingers",
           f.steps[i].bow.bow[1] * 1e3, solid.steps[i].bow.bow[1] * 1e3, 0.02, "mm");
}

} // namespace
} // namespace bedbow::verification
