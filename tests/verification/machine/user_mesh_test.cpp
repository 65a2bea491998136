// A mesh of one's own against the same structure said in bars, members and panels, and against closed forms.
#include "tests/verification/support/record.h"
#include "tests/verification/support/user_mesh_files.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

const std::string pull = "force = [\"300 N\", \"-80 N\", \"-200 N\"]\nmoment = [\"9 N*m\", \"4 N*m\", \"-7 N*m\"]\n";
const std::string flat =
    R"([[mesh.section]]
name = "flat"
shape = "rectangle"
width = "20 mm"
height = "60 mm"
)";

/// Lines along the sample bar's centroid, of uneven length and not in order.
OwnFile lines_along_a_bar() {
  OwnFile f;
  for (double x : {0.0, 90.0, 333.0, 640.0, 1000.0}) f.points.push_back({x, 10, -30});
  for (const auto& ends : {std::array{2, 3}, std::array{0, 1}, std::array{3, 4}, std::array{1, 2}})
    f.cells.push_back({3, {ends[0], ends[1]}});
  f.point_sets["foot"] = {1, 0, 0, 0, 0};
  f.point_sets["tip"] = {0, 0, 0, 0, 1};
  return f;
}

std::string held_and_pulled(const std::string& file) {
  return sample_material() + "[mesh]\nfile = \"" + file + "\"\nmaterial = \"sample\"\n" + flat +
         "[[hold]]\npoints = \"foot\"\nholds = " + all_six + R"(
[[load]]
points = "tip"
)" + pull +
         R"([[load]]
gravity = true
[[dial]]
name = "tip"
on = "mesh"
at = ["1000 mm", "40 mm", "-30 mm"]
)";
}

std::string bar_held_and_pulled() {
  return sample_bar(R"([[support]]
name = "foot"
bar = "bed.bar"
x = "0 mm"
holds = )" + all_six +
                    R"(
[[load]]
on = "bed.bar"
at = ["1000 mm", "10 mm", "-30 mm"]
)" + pull +
                    R"([[load]]
gravity = true
[[dial]]
name = "tip"
on = "bed.bar"
at = ["1000 mm", "40 mm", "-30 mm"]
)");
}

const char* axis[] = {"x", "y", "z"};

TEST(UserMesh, CantileverOfLinesIsABar) {
  const OwnFolder folder;
  const Findings bar = solved(
      replaced(bar_held_and_pulled(), "density = \"7850 kg/m^3\"", "density = \"7850 kg/m^3\"\nyield = \"275 MPa\""));
  for (const bool legacy : {false, true}) {
    const Findings own = solved(held_and_pulled(folder.write(lines_along_a_bar(), legacy)));
    const std::string kind = legacy ? "legacy .vtk" : ".vtu";
    for (int k = 0; k < 3; ++k)
      record("", "the same cantilever as a bar", "tip of a cantilever of lines, " + kind + ", along " + axis[k],
             dial(own, "tip")[k], dial(bar, "tip")[k], 1e-9, "mm");
    record("", "the same cantilever as a bar", "its worst stress, " + kind, own.steps[0].bars.at(0).stress * 1e-6,
           bar.steps[0].bars.at(0).stress * 1e-6, 1e-9, "MPa");
    EXPECT_EQ(own.steps[0].bars.size(), 1U);
    EXPECT_EQ(own.steps[0].bars[0].name, "mesh");
    EXPECT_NEAR(own.steps[0].bars[0].at_x, 0, 1e-12);
    record("", "the same cantilever as a bar", "its mass, " + kind, own.mass, bar.mass, 1e-12, "kg");
  }
}

/// A plate of 8 x 6 quads; the first corner is at the origin, and cells and points come in a shuffled order.
OwnFile plate(bool by_arrays) {
  OwnFile f;
  const auto number = [](int i, int j) { return ((j * 9 + i) * 25) % 63; }; // 25 and 63 have no common divisor
  f.points.resize(63);
  f.point_sets["edge"].resize(63);
  f.point_sets["corner"].resize(63);
  for (int j = 0; j <= 6; ++j)
    for (int i = 0; i <= 8; ++i) {
      f.points[number(i, j)] = {200.0 * i / 8, 150.0 * j / 6, 0};
      f.point_sets["edge"][number(i, j)] = i == 0 ? 1 : 0;
      f.point_sets["corner"][number(i, j)] = i == 8 && j == 6 ? 1 : 0;
    }
  for (int n = 0; n < 48; ++n) {
    const int cell = (n * 17) % 48, i = cell % 8, j = cell / 8;
    f.cells.push_back({9, {number(i, j), number(i + 1, j), number(i + 1, j + 1), number(i, j + 1)}});
  }
  if (by_arrays) {
    f.thickness.assign(48, 12);
    f.material.assign(48, "sample");
  }
  return f;
}

std::string plate_case(const std::string& what, const std::string& hold, const std::string& load,
                       const std::string& on) {
  return sample_material() + what + "[[hold]]\n" + hold + "holds = " + all_six + "\n[[load]]\n" + load +
         "force = [\"2 kN\", \"1 kN\", \"-500 N\"]\n[[load]]\n" + (on == "cheek" ? "panel" : "on") + " = \"" + on +
         R"("
pressure = "20 kPa"
[[load]]
gravity = true
[[dial]]
name = "corner"
on = ")" +
         on + "\"\nat = [\"200 mm\", \"150 mm\", \"0 mm\"]\n";
}

TEST(UserMesh, PlateOfQuadsIsAPanel) {
  const OwnFolder folder;
  const Findings panel = solved(plate_case(
      R"([[panel]]
name = "cheek"
corner = ["0 mm", "0 mm", "0 mm"]
edge_a = ["200 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "150 mm", "0 mm"]
thickness = "12 mm"
material = "sample"
divisions = [8, 6]
)",
      "from = [\"0 mm\", \"0 mm\", \"0 mm\"]\nto = [\"0 mm\", \"150 mm\", \"0 mm\"]\n",
      "at = [\"200 mm\", \"150 mm\", \"0 mm\"]\n", "cheek"));
  for (const bool legacy : {false, true}) {
    const std::string file = folder.write(plate(!legacy), legacy);
    const std::string given = legacy ? "material = \"sample\"\nthickness = \"12 mm\"\n" : "";
    const Findings own = solved(plate_case("[mesh]\nfile = \"" + file + "\"\n" + given, "points = \"edge\"\n",
                                           "points = \"corner\"\n", "mesh"));
    const std::string kind = legacy ? "legacy .vtk" : ".vtu with cell arrays";
    for (int k = 0; k < 3; ++k)
      record("", "the same plate as a [[panel]]", "corner of a plate of quads, " + kind + ", along " + axis[k],
             dial(own, "corner")[k], dial(panel, "corner")[k], 1e-9, "mm");
    record("", "the same plate as a [[panel]]", "its worst stress, " + kind, own.steps[0].bars.at(0).stress * 1e-6,
           panel.steps[0].bars.at(0).stress * 1e-6, 1e-9, "MPa");
    record("", "the same plate as a [[panel]]", "its mass, " + kind, own.mass, panel.mass, 1e-12, "kg");
  }
}

/// A bracket of two lines in a corner, (500, 10, -30) to (500, 200, -30) to (560, 200, -30).
OwnFile bracket() {
  OwnFile f;
  f.points = {{500, 10, -30}, {500, 200, -30}, {560, 200, -30}};
  f.cells = {{3, {0, 1}}, {3, {1, 2}}};
  f.point_sets["tip"] = {0, 0, 1};
  return f;
}

std::string bed_with(const std::string& bracket) {
  return sample_bar(support("left", 0, "\"x\", \"y\", \"z\", \"rx\"") + support("right", 1000, "\"y\", \"z\", \"rx\"") +
                    bracket + dial_at("bed", 500));
}

TEST(UserMesh, BracketJoinedToTheBed) {
  const OwnFolder folder;
  const auto member = [](const std::string& name, const std::string& from, const std::string& to) {
    return "[[member]]\nname = \"" + name + "\"\nfrom = " + from + "\nto = " + to +
           R"(
shape = "round"
diameter = "20 mm"
material = "sample"
)";
  };
  const std::string root = point({500, 10, -30}), elbow = point({500, 200, -30}), tip = point({560, 200, -30});
  const std::string read = "[[dial]]\nname = \"tip\"\nat = " + tip + "\non = ";
  const Findings members = solved(bed_with(member("arm", root, elbow) + member("finger", elbow, tip) +
                                           "[[load]]\nat = " + tip + "\n" + pull + read + "\"finger\"\n"));
  const std::string own = "[mesh]\nfile = \"" + folder.write(bracket(), false) +
                          R"("
material = "sample"
[[mesh.section]]
name = "rod"
shape = "round"
diameter = "20 mm"
[[load]]
points = "tip"
)" + pull + read + "\"mesh\"\n";
  const std::string tie = "[[tie]]\njoins = [\"bed.bar\", \"mesh\"]\nat = " + root + "\nholds = " + all_six + "\n";
  for (const bool tied : {false, true}) {
    const Findings f = solved(bed_with(tied ? replaced(own, "[mesh]\n", "[mesh]\njoined = false\n") + tie : own));
    const std::string how = tied ? "by a rigid [[tie]]" : "where they touch";
    for (int k = 0; k < 3; ++k) {
      record("", "the same bracket as two members",
             std::string("bracket joined to the bed ") + how + ": tip along " + axis[k], dial(f, "tip")[k],
             dial(members, "tip")[k], 1e-9, "mm");
      record("", "the same bracket as two members",
             std::string("bracket joined to the bed ") + how + ": bed along " + axis[k], dial(f, "bed")[k],
             dial(members, "bed")[k], 1e-9, "mm");
    }
  }
}

// A square plate hung on a rigid bed by four springs beside each other: it sinks by the load over their stiffness.
TEST(UserMesh, PlateOnScrews) {
  const OwnFolder folder;
  OwnFile f;
  for (double y : {0.0, 100.0, 200.0})
    for (double x : {400.0, 500.0, 600.0}) f.points.push_back({x, y, 50});
  for (int c : {0, 1, 3, 4}) f.cells.push_back({9, {c, c + 1, c + 4, c + 3}});
  f.point_sets["load"] = {1, 1, 1, 1, 1, 1, 1, 1, 1};
  std::string ties;
  for (const auto& at : {Eigen::Vector3d(430, 40, 50), Eigen::Vector3d(570, 40, 50), Eigen::Vector3d(430, 160, 50),
                         Eigen::Vector3d(570, 160, 50)})
    ties += "[[tie]]\njoins = [\"ground\", \"mesh\"]\nat = " + point(at) +
            R"(
holds = ["x", "y", "z"]
stiffness = "20 kN/mm"
seat = ["0.1 mm", "0.1 mm"]
)";
  const Findings own = solved(sample_material() + "[mesh]\nfile = \"" + folder.write(f, false) +
                              R"("
material = "sample"
thickness = "200 mm"
)" + ties +
                              R"([[load]]
points = "load"
force = ["0 N", "0 N", "-4 kN"]
[[dial]]
name = "spot"
on = "mesh"
at = ["430 mm", "40 mm", "50 mm"]
)");
  // Each takes a quarter by symmetry, whatever the plate does between them.
  record("", "F/4 by symmetry", "force of one of four screws", joints_of(own.steps[0], JointKind::tie)[0].value, 1000,
         1e-9, "N");
  record("", "F/(4 k)", "how far a plate on four screws sinks at one", dial(own, "spot").z(), -0.05, 1e-9, "mm");
}

// A tie to a panel used to hold to ground instead: the panel was taken for nothing. It has to pull the bed along.
TEST(UserMesh, TieHoldsAPanel) {
  const std::string panel =
      R"([[panel]]
name = "cheek"
corner = ["450 mm", "100 mm", "-30 mm"]
edge_a = ["100 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "100 mm", "0 mm"]
thickness = "12 mm"
material = "sample"
divisions = [2, 2]
[[load]]
at = ["500 mm", "150 mm", "-30 mm"]
force = ["0 N", "0 N", "-600 N"]
[[tie]]
joins = ["bed.bar", "cheek"]
at = ["500 mm", "100 mm", "-30 mm"]
holds = )" +
      all_six + "\n";
  const Findings f = solved(replaced(bed_with(panel), "[bed]", "[bed]\n"));
  // Simply supported, force at mid-span, shear flexibility k A = 10 (1 + nu)/(12 + 11 nu) 1200 mm^2.
  const double shear = 600 * 1000 / (4 * 210000 / 2.6 * 1200 * 10 * 1.3 / 15.3);
  record("", "F L^3/(48 EI) + F L/(4 k A G)", "bed under a panel that is tied to it", dial(f, "bed").z(),
         -(600 * 1e9 / (48 * sample_EI) + shear), 1e-6, "mm");
}

} // namespace
} // namespace bedbow::verification
