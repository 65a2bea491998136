// Forces of plain holds against statics and closed forms.
#include "solver/findings/results.h"
#include "solver/model/model.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/user_mesh_files.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

namespace bedbow::verification {

namespace {

const std::string plain_steel = R"([material.steel]
E = "210 GPa"
nu = 0.3
density = "7850 kg/m^3"
)";

std::string bench_post(const std::string& extra) {
  return R"([[member]]
name = "post"
from = ["0 mm", "0 mm", "0 mm"]
to = ["0 mm", "0 mm", "500 mm"]
shape = "round"
diameter = "20 mm"
material = "steel"
)" + extra;
}

std::string held(const std::string& where, const std::string& holds) {
  return "[[hold]]\n" + where + "\nholds = [" + holds + "]\n";
}

} // namespace

// A post of 500 mm, held fast at its foot: what pushes its top comes out at the foot, force and moment.
TEST(HoldForces, FootOfAPost) {
  const Findings f = solved(plain_steel + bench_post("") +
                            held("at = [\"0 mm\", \"0 mm\", \"0 mm\"]", R"("x", "y", "z", "rx", "ry", "rz")") +
                            R"([[load]]
at = ["0 mm", "0 mm", "500 mm"]
force = ["30 N", "-40 N", "-100 N"]
)");
  const JointResult& r = joint(joints_of(f.steps.front(), JointKind::support), "hold 1");
  record("", "statics", "foot of a post, x", r.force.x(), -30, 1e-9, "N");
  record("", "statics", "foot of a post, y", r.force.y(), 40, 1e-9, "N");
  record("", "statics", "foot of a post, z", r.force.z(), 100, 1e-9, "N");
  record("", "statics", "foot of a post, about x", r.moment.x(), -20, 1e-9, "N m"); // F_y -40 N at 0.5 m
  record("", "statics", "foot of a post, about y", r.moment.y(), -15, 1e-9, "N m");
  record("", "statics", "foot of a post, about z", r.moment.z(), 0, 1e-9, "N m");
}

// A3: clamped at both ends under a uniform load, here self-weight-like 1 N/mm over 800 mm: q L/2 and q L^2/12 at
// either.
TEST(HoldForces, ClampedBeam) {
  const Findings f = solved(plain_steel +
                            R"([[member]]
name = "beam"
from = ["0 mm", "0 mm", "0 mm"]
to = ["800 mm", "0 mm", "0 mm"]
shape = "rectangle"
width = "20 mm"
height = "60 mm"
material = "steel"
)" + held("at = [\"0 mm\", \"0 mm\", \"0 mm\"]", R"("x", "y", "z", "rx", "ry", "rz")") +
                            held("at = [\"800 mm\", \"0 mm\", \"0 mm\"]", R"("y", "z", "rx", "ry", "rz")") +
                            R"([[load]]
from = ["0 mm", "0 mm", "0 mm"]
to = ["800 mm", "0 mm", "0 mm"]
per_length = ["0 N/mm", "0 N/mm", "-1 N/mm"]
)");
  for (const auto& [name, sign] : {std::pair{"hold 1", -1.0}, {"hold 2", 1.0}}) {
    const JointResult& r = joint(joints_of(f.steps.front(), JointKind::support), name);
    record("A3", "clamped beam under uniform load: q L/2, q L^2/12", std::string("force, ") + name, r.force.z(), 400,
           1e-9, "N");
    record("A3", "clamped beam under uniform load: q L/2, q L^2/12", std::string("moment, ") + name, r.moment.y(),
           sign * 800.0 * 0.8 / 12, 1e-9, "N m");
  }
}

namespace {

/// A plate of 300 x 200 mm held along its edge at y = 0, under pressure.
Findings shelf(const std::string& thickness, const std::string& divisions, const std::string& pressure) {
  return solved(plain_steel +
                R"([[panel]]
name = "shelf"
corner = ["0 mm", "0 mm", "0 mm"]
edge_a = ["300 mm", "0 mm", "0 mm"]
edge_b = ["0 mm", "200 mm", "0 mm"]
material = "steel"
thickness = ")" +
                thickness + "\"\ndivisions = " + divisions + "\n" +
                held("from = [\"0 mm\", \"0 mm\", \"0 mm\"]\nto = [\"300 mm\", \"0 mm\", \"0 mm\"]",
                     R"("x", "y", "z", "rx", "ry", "rz")") +
                "[[load]]\npanel = \"shelf\"\npressure = \"" + pressure + "\"\n");
}

} // namespace

// A plate held along one edge, under pressure: the edge brings the whole load, and its moment about the edge.
TEST(HoldForces, EdgeOfAPlate) {
  const Findings f = shelf("6 mm", "[6, 4]", "-2 kPa");
  const JointResult& r = joint(joints_of(f.steps.front(), JointKind::support), "hold 1");
  record("", "statics", "edge of a shelf, z", r.force.z(), 2000 * 0.3 * 0.2, 1e-9, "N");
  record("", "statics", "edge of a shelf, about x", r.moment.x(), 2000 * 0.3 * 0.2 * 0.1, 1e-9, "N m");
  record("", "statics", "edge of a shelf, about y through its middle", r.moment.y(), 0, 1e-7, "N m");
}

// The certificate took the load on one element for "the greatest force", so that a shelf of 40 x 40 elements, correct
// to ten digits, was refused as 2.9e-6 out of equilibrium, and a coarse one warned. Over the whole load the same error
// is below the 1e-9 that are promised: the edge brings the load, whatever the mesh.
TEST(HoldForces, FineMeshesAreAsMuchInEquilibrium) {
  for (const std::string divisions : {"[8, 8]", "[40, 40]"}) {
    const Findings f = shelf("3 mm", divisions, "1 kPa");
    for (const std::string& w : f.warnings) EXPECT_EQ(w.find("equilibrium"), std::string::npos) << w;
    const JointResult& r = joint(joints_of(f.steps.front(), JointKind::support), "hold 1");
    record("", "statics", "edge of a shelf of " + divisions + " elements, z", r.force.z(), -1000 * 0.3 * 0.2, 1e-9,
           "N");
    EXPECT_LT(f.steps.front().checks.equilibrium, 1e-9);
  }
}

// A wall that held a set of points carried "0 N at no place". A shelf of quads of an own mesh, held along its edge: the
// wall brings what the load and its weight ask, and the moment about the middle of the held points.
TEST(HoldForces, SetOfPoints) {
  OwnFile file;
  for (double y : {0.0, 60.0, 150.0})
    for (double x : {0.0, 100.0, 250.0}) file.points.push_back({x, y, 0});
  for (int j : {0, 1})
    for (int i : {0, 1}) file.cells.push_back({9, {3 * j + i, 3 * j + i + 1, 3 * j + i + 4, 3 * j + i + 3}});
  file.point_sets["wall"] = {1, 0, 0, 1, 0, 0, 1, 0, 0};
  file.point_sets["corner"] = {0, 0, 1, 0, 0, 0, 0, 0, 0};
  const OwnFolder folder;
  const Findings f = solved(plain_steel + "[mesh]\nfile = \"" + folder.write(file, false) +
                            R"("
material = "steel"
thickness = "8 mm"
)" + held("points = \"wall\"", R"("x", "y", "z", "rx", "ry", "rz")") +
                            R"([[load]]
points = "corner"
force = ["30 N", "-20 N", "-200 N"]
moment = ["3 N*m", "0 N*m", "0 N*m"]
[[load]]
gravity = true
)");
  const double weight = 7850 * 9.80665 * 0.25 * 0.15 * 0.008;
  const Eigen::Vector3d at(0, 0.07, 0), corner = Eigen::Vector3d(0.25, 0, 0) - at;
  const Eigen::Vector3d middle = Eigen::Vector3d(0.125, 0.075, 0) - at, load(30, -20, -200), down(0, 0, -weight);
  const Eigen::Vector3d force = -load - down;
  const Eigen::Vector3d moment = -corner.cross(load) - middle.cross(down) - Eigen::Vector3d(3, 0, 0);
  const JointResult& r = joint(joints_of(f.steps.front(), JointKind::support), "hold 1");
  EXPECT_LT((r.at - at).norm(), 1e-12) << r.at.transpose();
  for (int k = 0; k < 3; ++k) {
    const std::string axis(1, static_cast<char>('x' + k));
    record("", "statics", "shelf held by a set of points, along " + axis, r.force[k], force[k], 1e-9, "N");
    record("", "statics", "shelf held by a set of points, about " + axis, r.moment[k], moment[k], 1e-9, "N m");
  }
  EXPECT_LT(f.steps.front().checks.equilibrium, 1e-9);
}

// The certificate sees what ground brings: a hold's force or moment that is reported one percent too great stands out.
TEST(HoldForces, CertificateSeesAWrongOne) {
  const Registries registries = builtin_registries();
  const Machine machine = machine_of(plain_steel + bench_post("") +
                                     held("at = [\"0 mm\", \"0 mm\", \"0 mm\"]", R"("x", "y", "z", "rx", "ry", "rz")") +
                                     R"([[load]]
at = ["0 mm", "0 mm", "500 mm"]
force = ["30 N", "-40 N", "-100 N"]
)");
  const Model model = make_model(machine, registries);
  const StepsOutcome solved = solve_steps(model, std::nullopt);
  ASSERT_EQ(solved.status, Status::ok);
  const auto equilibrium = [&](double force, double moment) {
    StepResult r;
    fill_joints(model, solved.steps.front(), r);
    JointResult& hold = joints_of(r, JointKind::support).back();
    hold.force *= force;
    hold.moment *= moment;
    fill_checks(model, solved.steps.front(), r);
    return r.checks.equilibrium;
  };
  EXPECT_LT(equilibrium(1, 1), 1e-9);
  EXPECT_GT(equilibrium(1.01, 1), 1e-3);
  EXPECT_GT(equilibrium(1, 1.01), 1e-3);
}

} // namespace bedbow::verification
