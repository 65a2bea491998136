// A mesh of one's own where it has to do more than stand still: swinging, buckling, on the apron, lines and quads in
// one file.
#include "tests/verification/support/record.h"
#include "tests/verification/support/user_mesh_files.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

using std::numbers::pi;

std::string mesh(const std::string& file, const std::string& more = "", const std::string& material = "sample") {
  return "[mesh]\nfile = \"" + file + "\"\nmaterial = \"" + material + "\"\n" + more;
}

/// A strip of 1 m along x in 20 lines, 20 mm wide (y) and 4 mm high (z): (h/L)^2 = 2e-5 is what shear and rotary
/// inertia are worth.
OwnFile strip() {
  OwnFile f;
  for (int i = 0; i <= 20; ++i) f.points.push_back({50.0 * i, 0, 0});
  for (int i = 0; i < 20; ++i) f.cells.push_back({3, {i, i + 1}});
  f.point_sets["foot"].assign(21, 0);
  f.point_sets["tip"].assign(21, 0);
  f.point_sets["foot"].front() = f.point_sets["tip"].back() = 1;
  return f;
}
const std::string strip_section =
    R"([[mesh.section]]
name = "strip"
shape = "rectangle"
width = "20 mm"
height = "4 mm"
)";

TEST(UserMesh, LinesSwing) {
  const OwnFolder folder;
  const Findings f = solved(sample_material() + mesh(folder.write(strip(), false)) + strip_section +
                            "[[hold]]\npoints = \"foot\"\nholds = " + all_six + R"(
[solve]
modes = 5
)");
  const double EI = 210e9 * 0.02 * std::pow(0.004, 3) / 12, mass = 7850 * 0.02 * 0.004;
  const double wide = 210e9 * 0.004 * std::pow(0.02, 3) / 12;
  ASSERT_TRUE(f.modes);
  const auto hz = [&](double lambda, double stiffness) {
    return lambda * lambda / (2 * pi) * std::sqrt(stiffness / mass);
  };
  // Rotary inertia and shear take some 4 (h/L)^2 of the first mode across the strip, h = 20 mm, more than of any other.
  std::vector<double> sorted{hz(1.87510407, EI), hz(4.69409113, EI), hz(1.87510407, wide), hz(7.85475744, EI)};
  std::ranges::sort(sorted);
  for (std::size_t i = 0; i < sorted.size(); ++i)
    record("", "Blevins 1979 Table 8-1: lambda^2/(2 pi L^2) sqrt(EI/m)",
           "frequency " + std::to_string(i + 1) + " of a cantilever of lines", f.modes->modes.at(i).frequency,
           sorted[i], 2e-3, "Hz");
}

TEST(UserMesh, LinesBuckle) {
  const OwnFolder folder;
  const Findings f = solved(sample_material() + mesh(folder.write(strip(), true)) + strip_section +
                            "[[hold]]\npoints = \"foot\"\nholds = " + all_six +
                            R"(
[[load]]
points = "tip"
force = ["-10 N", "0 N", "0 N"]
[solve]
buckling = 1
)");
  ASSERT_TRUE(f.modes);
  const double EI = 210e9 * 0.02 * std::pow(0.004, 3) / 12;
  record("", "Euler, pi^2 EI/(4 L^2)", "buckling load of a column of lines", f.modes->buckling_factors.at(0) * 10,
         pi * pi * EI / 4, 1e-4, "N");
}

constexpr int pieces = 20; ///< quads along either side of the square

/// A square plate of 400 mm in the x-y plane, with sets for its edges and for a uniform push along x.
OwnFile square() {
  OwnFile f;
  const double side = 400;
  auto& rim = f.point_sets["rim"];
  auto& left = f.point_sets["left"];
  auto& right = f.point_sets["right"];
  auto& origin = f.point_sets["origin"];
  auto& across = f.point_sets["across"];
  for (int j = 0; j <= pieces; ++j)
    for (int i = 0; i <= pieces; ++i) {
      f.points.push_back({side * i / pieces, side * j / pieces, 0});
      const double share = j == 0 || j == pieces ? 0.5 : 1;
      rim.push_back(i == 0 || j == 0 || i == pieces || j == pieces ? 1 : 0);
      left.push_back(i == 0 ? share : 0);
      right.push_back(i == pieces ? share : 0);
      origin.push_back(i == 0 && j == 0 ? 1 : 0);
      across.push_back(i == pieces && j == 0 ? 1 : 0);
    }
  for (int j = 0; j < pieces; ++j)
    for (int i = 0; i < pieces; ++i) {
      const int at = j * (pieces + 1) + i;
      f.cells.push_back({9, {at, at + 1, at + pieces + 2, at + pieces + 1}});
    }
  return f;
}

// Thin enough (t/a = 1/100) that shear takes less than 1e-3; MITC4 with 20 quads a side is some (pi/20)^2/4 = 0.6 %
// stiff.
TEST(UserMesh, QuadsSwingAndBuckle) {
  const OwnFolder folder;
  const Findings f = solved(sample_material() + mesh(folder.write(square(), false), "thickness = \"4 mm\"\n") +
                            R"([[hold]]
points = "rim"
holds = ["z"]
[[hold]]
points = "origin"
holds = ["x", "y", "rz"]
[[hold]]
points = "across"
holds = ["y"]
[[load]]
points = "left"
force = ["1 kN", "0 N", "0 N"]
[[load]]
points = "right"
force = ["-1 kN", "0 N", "0 N"]
[solve]
modes = 2
buckling = 1
)");
  ASSERT_TRUE(f.modes);
  const double a = 0.4, t = 0.004, D = 210e9 * t * t * t / 12 / (1 - 0.09);
  record("", "Blevins 1979 Table 11-4: pi/a^2 sqrt(D/rho t)", "first frequency of a square of quads, simply supported",
         f.modes->modes.at(0).frequency, pi / (a * a) * std::sqrt(D / (7850 * t)), 0.01, "Hz");
  record("", "Timoshenko & Gere 1961, 9.2: 4 pi^2 D/a", "load under which a square of quads buckles",
         f.modes->buckling_factors.at(0), 4 * pi * pi * D / a / 1000, 0.01, "kN");
}

/// A strip of quads, 100 x 8 mm, with lines of 10 x 20 mm along its middle: one file.
OwnFile stiffened() {
  OwnFile f;
  for (int i = 0; i <= 40; ++i)
    for (const double y : {-50.0, 0.0, 50.0}) f.points.push_back({25.0 * i, y, 0});
  for (int i = 0; i < 40; ++i) {
    const int at = 3 * i;
    f.cells.push_back({9, {at, at + 3, at + 4, at + 1}});
    f.cells.push_back({3, {at + 1, at + 4}});
    f.cells.push_back({9, {at + 1, at + 4, at + 5, at + 2}});
  }
  f.point_sets["foot"].assign(f.points.size(), 0);
  f.point_sets["tip"].assign(f.points.size(), 0);
  for (std::size_t k = 0; k < 3; ++k) {
    f.point_sets["foot"][k] = 1;
    f.point_sets["tip"][f.points.size() - 1 - k] = k == 1 ? 2 : 1;
  }
  return f;
}

// With nu = 0 a strip bends as a beam, and lines in its middle plane add theirs: F L^3/(3 (E I_strip + E I_lines)).
// Shear is below (h/L)^2 = 4e-4, the quads' even curvature over 40 pieces (1/40)^2/4.
TEST(UserMesh, LinesAndQuadsInOneFile) {
  const OwnFolder folder;
  double first = 0;
  for (const bool legacy : {false, true}) {
    const Findings f = solved(sample_material(0) + mesh(folder.write(stiffened(), legacy), "thickness = \"8 mm\"\n") +
                              R"([[mesh.section]]
name = "rib"
shape = "rectangle"
width = "10 mm"
height = "20 mm"
[[hold]]
points = "foot"
holds = )" + all_six +
                              R"(
[[load]]
points = "tip"
force = ["0 N", "0 N", "-40 N"]
[[dial]]
name = "tip"
on = "mesh"
at = ["1000 mm", "0 mm", "0 mm"]
)");
    const double EI = 210e3 * (100 * 512 + 10 * 8000) / 12.0;
    record("", "F L^3/(3 E (I1 + I2))",
           std::string("tip of a strip of quads with lines along it, ") + (legacy ? "legacy .vtk" : ".vtu"),
           dial(f, "tip").z(), -40 * 1e9 / (3 * EI), 1e-3, "mm");
    if (legacy)
      EXPECT_EQ(dial(f, "tip").z(), first) << "the same mesh in two formats";
    else
      first = dial(f, "tip").z();
  }
}

/// A flat of 40 x 10 mm under the bar of screwed_bed, as quads.
OwnFile flat_below() {
  OwnFile f;
  for (int i = 0; i <= 40; ++i)
    for (const double y : {-20.0, -10.0, 0.0, 10.0, 20.0}) f.points.push_back({25.0 * i, y, -125});
  for (int i = 0; i < 40; ++i)
    for (int j = 0; j < 4; ++j) {
      const int at = 5 * i + j;
      f.cells.push_back({9, {at, at + 5, at + 6, at + 1}});
    }
  return f;
}

/// A bar of 20 x 120 mm on two supports with 4 kN in the middle, and what is screwed on below by M8 every 100 mm.
std::string screwed_bed(const std::string& partner, const std::string& more) {
  return sample_material(0) +
         R"([bed]
length = "1000 mm"
material = "sample"
[[bed.bar]]
name = "web"
shape = "rectangle"
width = "20 mm"
height = "120 mm"
at = ["0 mm", "-60 mm"]
)" + more +
         "[[screws]]\nname = \"row\"\njoins = [\"bed.web\", \"" + partner +
         R"("]
size = "M8"
class = "8.8"
first = "50 mm"
pitch = "100 mm"
count = 10
[[support]]
name = "left"
bar = "bed.web"
x = "0 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
name = "right"
bar = "bed.web"
x = "1000 mm"
holds = ["y", "z", "rx"]
[[load]]
on = "bed.web"
at = ["500 mm", "0 mm", "0 mm"]
force = ["0 N", "0 N", "-4 kN"]
[[dial]]
name = "middle"
on = "bed.web"
at = ["500 mm", "0 mm", "0 mm"]
[solve]
element_size = "25 mm"
)";
}

// A row of screws takes a mesh of quads as it takes a bar: the same flat both ways, nu = 0. Under a screw quads give
// way by about 1/(E t) = 4.8e-7 mm/N where a beam's section is rigid: 3 % of what a screw after Huth does, 0.24 % of
// one of 5 kN/mm, of the quarter of the bow that the flat is worth.
TEST(UserMesh, OnARowOfScrews) {
  const OwnFolder folder;
  const std::string bar = R"([[bed.bar]]
name = "flat"
shape = "rectangle"
width = "40 mm"
height = "10 mm"
at = ["0 mm", "-125 mm"]
)";
  const std::string quads = mesh(folder.write(flat_below(), false), "thickness = \"10 mm\"\n");
  for (const bool huth : {true, false}) {
    const auto solve_with = [&](const std::string& partner, const std::string& more) {
      const std::string text = screwed_bed(partner, more);
      return solved(huth ? text : replaced(text, "count = 10", "count = 10\nshear_stiffness = \"5 kN/mm\""));
    };
    const std::string kind = huth ? ", after Huth" : ", 5 kN/mm";
    const Findings two = solve_with("bed.flat", bar), own = solve_with("mesh", quads);
    record("", "the same flat as a second bar", "bar on which a flat of quads is screwed" + kind,
           dial(own, "middle").z(), dial(two, "middle").z(), huth ? 7e-3 : 1e-3, "mm");
    const JointResult &a = joint(joints_of(own.steps[0], JointKind::screw), "row"),
                      &b = joint(joints_of(two.steps[0], JointKind::screw), "row");
    record("", "the same flat as a second bar", "shear of the worst screw of that row" + kind, a.value, b.value,
           huth ? 3e-2 : 3e-3, "N");
    ASSERT_FALSE(a.checks.empty());
    for (std::size_t i = 0; huth && i < a.checks.size(); ++i)
      record("", "the same flat as a second bar", "allowable of that screw, " + a.checks[i].what,
             a.checks[i].allowed.value, b.checks.at(i).allowed.value, 1e-12);
  }
}

/// Two lines from the apron's face outwards and up, as a stop for the sheet would go.
OwnFile stop() {
  OwnFile f;
  f.points = {{300, -16, -40}, {300, -116, -40}, {300, -116, 60}};
  f.cells = {{3, {0, 1}}, {3, {1, 2}}};
  f.point_sets["tip"] = {0, 0, 1};
  return f;
}

// On the apron a mesh turns with it: its weight, a steady moment about the hinges, pulls sideways once the apron stands
// up. The same stop as two members gives the same numbers at every angle.
TEST(UserMesh, OnTheApronItTurns) {
  const OwnFolder folder;
  std::string machine = project_file("cases/hive-lid/case.toml");
  machine = replaced(machine, "[solve]\n", "[solve]\nelement_size = \"60 mm\"\n");
  const std::string root = point({300, -16, -40}), elbow = point({300, -116, -40}), tip = point({300, -116, 60});
  const auto tie = [&](const std::string& with) {
    return "[[tie]]\nname = \"stop\"\njoins = [\"apron.face\", \"" + with + "\"]\nat = " + root +
           "\nholds = " + all_six + "\n";
  };
  const auto member = [](const std::string& name, const std::string& from, const std::string& to) {
    return "[[member]]\nname = \"" + name + "\"\nfrom = " + from + "\nto = " + to +
           R"(
shape = "round"
diameter = "12 mm"
material = "S275JR"
divisions = 1
)";
  };
  const std::string rest = R"([[load]]
gravity = true
[[dial]]
name = "stop"
at = )" + tip + "\non = ";
  const Findings members =
      solved(machine + member("arm", root, elbow) + member("finger", elbow, tip) + tie("arm") + rest + "\"finger\"\n");
  const Findings own = solved(machine + mesh(folder.write(stop(), false), "", "S275JR") +
                              R"([[mesh.section]]
name = "rod"
shape = "round"
diameter = "12 mm"
)" + tie("mesh") + rest + "\"mesh\"\n");
  ASSERT_EQ(own.steps.size(), members.steps.size());
  for (std::size_t s = 0; s < own.steps.size(); ++s)
    for (int k = 1; k < 3; ++k)
      record("", "the same stop as two members",
             "stop on the apron, " + own.steps[s].name + ", along " + (k == 1 ? "y" : "z"), dial(own, "stop", s)[k],
             dial(members, "stop", s)[k], 1e-7, "mm");
}

} // namespace
} // namespace bedbow::verification
