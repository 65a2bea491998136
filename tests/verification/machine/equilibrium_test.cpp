// Equilibrium of bed, clamp and apron in every step, summed here from what the results say of joints and pads and from
// the contract's sheet loads, not from the program's own certificate.
#include "solver/model/loads.h"
#include "solver/model/model.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

struct Resultant {
  Eigen::Vector3d force = Eigen::Vector3d::Zero(), moment = Eigen::Vector3d::Zero(); ///< moment about the origin
  double greatest = 0;
  void add(const Eigen::Vector3d& at, const Eigen::Vector3d& f, const Eigen::Vector3d& m = Eigen::Vector3d::Zero()) {
    force += f;
    moment += at.cross(f) + m;
    greatest = std::max(greatest, f.norm());
  }
  [[nodiscard]] double rest(double length) const {
    return std::max(force.cwiseAbs().maxCoeff(), moment.cwiseAbs().maxCoeff() / length) / greatest;
  }
};

using Bodies = std::array<Resultant, 3>;

void act(Bodies& bodies, const std::array<Ref, 2>& joins, const JointResult& j) {
  for (int side = 0; side < 2; ++side) // the result is the force on the first
    if (joins[side].kind == Ref::Kind::bar)
      bodies[static_cast<std::size_t>(joins[side].body)].add(j.at, side == 0 ? j.force : Eigen::Vector3d(-j.force),
                                                             side == 0 ? j.moment : Eigen::Vector3d(-j.moment));
}

void add_joints(Bodies& bodies, const Machine& m, const StepResult& step) {
  m.each_joint_list([&](JointKind kind, const auto& list) {
    if (kind == JointKind::screw) return; // within a body
    const auto results = joints_of(step, kind);
    for (std::size_t i = 0; i < list.size() && i < results.size(); ++i) act(bodies, list[i].joins, results[i]);
  });
  for (const ForceArrow& a : step.fields.forces)
    if (a.kind == "pad" || a.kind == "touch" || a.kind == "friction") {
      bodies[0].add(a.at, a.force); // on the bed
      bodies[1].add(a.at, -a.force);
    }
}

/// Sheet loads of the contract, each uniform over the width, as forces at the sheet's middle.
void add_sheet(Bodies& bodies, const Machine& m, const SheetResult& s, double angle) {
  const Sheet& sheet = *m.sheet;
  const Eigen::Vector3d n(0, std::sin(angle), std::cos(angle)), out(0, -std::cos(angle), std::sin(angle));
  const Eigen::Vector3d mid(sheet.centre, 0, 0), grip(0, 0, s.grip * sheet.width);
  const Eigen::Vector3d edge = mid + Eigen::Vector3d(0, m.nose.setback, 0);
  // The nose's edge holds the sheet against the push, on a lever of a + b cos(angle): m = F (a + b cos(angle)).
  const double push = s.moment / (sheet.flange + m.nose.setback * std::cos(angle));
  bodies[1].add(edge, push * sheet.width * n);
  bodies[1].add(edge, grip);
  bodies[0].add(edge + Eigen::Vector3d(0, sheet.grip, 0), -grip);
  bodies[2].add(mid + sheet.flange * out, -push * sheet.width * n);
}

void expect_equilibrium(const std::string& name, const Machine& m) {
  const Findings f = solved(m);
  for (std::size_t i = 0; i < f.steps.size(); ++i) {
    Bodies bodies;
    add_joints(bodies, m, f.steps[i]);
    if (i > 0) add_sheet(bodies, m, *f.sheet, f.steps[i].angle);
    for (BodyKind k : all_bodies) {
      const Resultant& r = bodies[static_cast<std::size_t>(k)];
      if (r.greatest < 1e-3) continue; // nothing acts on the apron while clamping
      record("", "equilibrium, summed from joints, pads and sheet loads",
             name + " " + f.steps[i].name + ": " + to_string(k), r.rest(m.body(k).length), 0, 1e-9);
    }
  }
}

TEST(Equilibrium, EveryBodyInEveryStep) {
  expect_equilibrium("hive-lid", machine_of(project_file("cases/hive-lid/case.toml")));
  expect_equilibrium("hive-lid as strips",
                     machine_of(replaced(project_file("cases/hive-lid/case.toml"), "shape = \"rectangle\"",
                                         "model = \"strip\"\nshape = \"rectangle\"")));
  expect_equilibrium("folder-x", machine_of(project_file("tests/cases/folder-x.toml")));
}

// A handle's moment was reported as a force: "0.055 kN" for 54.6 N m. At every angle the hands hold the apron's push
// on the flange a, which with the set-back b makes the moment that folds the sheet: m a/(a + b cos(angle)) times its
// width, shared by both; a hand's force is known where the handle's reach is.
TEST(Equilibrium, HandlesHoldTheMomentThatFoldsTheSheet) {
  const std::string hive = project_file("cases/hive-lid/case.toml");
  for (const std::string reach : {"", "reach = \"400 mm\"\n"}) {
    const Machine m = machine_of(replaced(hive, "[[handle]]\n", "[[handle]]\n" + reach));
    const Findings f = solved(m);
    for (std::size_t i = 1; i < f.steps.size(); ++i) {
      double moment = 0;
      for (const JointResult& h : joints_of(f.steps[i], JointKind::handle)) {
        moment += h.figure("moment");
        if (reach.empty())
          EXPECT_TRUE(std::isnan(h.value));
        else
          EXPECT_DOUBLE_EQ(h.value, h.figure("moment") / 0.4);
      }
      record("", "equilibrium of the apron about the bend line", "moment of both handles, " + f.steps[i].name, moment,
             f.sheet->moment * m.sheet->width * 25 / (25 + 3.5 * std::cos(f.steps[i].angle)), 1e-9, "N m");
    }
  }
}

// A stop of two rods, tied to the apron's face, stayed where it was drawn while the apron swung up: its weight pulled
// at the lever of 0 deg at every angle, and ground's reactions did not balance it. It swings along: the hands hold its
// weight times where its middles stand.
TEST(Equilibrium, WhatATieHangsOnTheApronSwingsWithIt) {
  const std::string hive = project_file("cases/hive-lid/case.toml") + "[[load]]\ngravity = true\n";
  const auto rod = [](const std::string& name, const Eigen::Vector3d& from, const Eigen::Vector3d& to) {
    return "[[member]]\nname = \"" + name + "\"\nfrom = " + point(from) + "\nto = " + point(to) +
           R"(
shape = "round"
diameter = "12 mm"
material = "S275JR"
)";
  };
  const Findings bare = solved(hive);
  const Findings stop =
      solved(hive + rod("arm", {300, -16, -40}, {300, -116, -40}) + rod("finger", {300, -116, -40}, {300, -116, 60}) +
             "[[tie]]\njoins = [\"apron.face\", \"arm\"]\nat = " + point({300, -16, -40}) +
             "\nholds = [\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"]\n");
  const double weight = 7850 * std::numbers::pi / 4 * 0.012 * 0.012 * 0.1 * 9.80665; // of each
  const auto held = [](const StepResult& s) {
    double sum = 0;
    for (const JointResult& h : joints_of(s, JointKind::handle)) sum += h.moment.x();
    return sum;
  };
  for (std::size_t i = 1; i < stop.steps.size(); ++i) {
    const double c = std::cos(stop.steps[i].angle), s = std::sin(stop.steps[i].angle);
    const double y = (-0.066 - 0.116) * c + (-0.040 + 0.010) * s; // of both middles, turned
    record("", "equilibrium of the apron about the bend line", "what a stop on the apron adds, " + stop.steps[i].name,
           held(stop.steps[i]) - held(bare.steps[i]), weight * y, 1e-8, "N m");
    EXPECT_LT(stop.steps[i].checks.equilibrium, 1e-9);
  }
}

/// Nodal loads of the sheet at an angle: on each body, about the bend line, global axes.
Bodies sheet_resultants(const Model& m, const SheetLoads& s, double angle) {
  const LoadBuilder builder(m.machine, m.mesh, m.map, m.data);
  StepLoads loads = builder.empty();
  builder.add_sheet(s, angle, loads);
  const Eigen::Matrix3d turn = Eigen::AngleAxisd(-angle, Eigen::Vector3d::UnitX()).toRotationMatrix();
  Bodies bodies;
  for (const BarLayout& l : m.mesh.layouts)
    for (const int node : l.nodes) {
      const Eigen::Matrix3d t = l.owner.body == BodyKind::apron ? turn : Eigen::Matrix3d::Identity();
      const Vector6d& p = loads.nodal[node];
      bodies[static_cast<std::size_t>(l.owner.body)].add(t * m.mesh.nodes[node].x, t * p.head<3>(), t * p.tail<3>());
    }
  return bodies;
}

// For every angle the loads on the three bodies balance each other, force and moment, and each is what the contract
// says.
TEST(SheetLoads, BalanceForEveryAngle) {
  const Registries registries = builtin_registries();
  for (const char* setback : {"3.5 mm", "5.5 mm"}) {
    const Machine machine = machine_of(replaced(project_file("cases/hive-lid/case.toml"), "setback = \"3.5 mm\"",
                                                "setback = \"" + std::string(setback) + "\""));
    const Model model = make_model(machine, registries);
    const SheetLoads s = *sheet_loads_of(machine, registries);
    double worst = 0, worst_push = 0;
    for (int degrees = 0; degrees <= 180; ++degrees) {
      const double angle = degrees * std::numbers::pi / 180;
      const Bodies b = sheet_resultants(model, s, angle);
      // Moments about the nose's edge: m = F (a + b cos(angle)), along the flange and along the bed.
      const double a = machine.sheet->flange, edge = machine.nose.setback;
      const double scale = s.moment / (a + edge * std::cos(angle)) * machine.sheet->width;
      worst = std::max(worst, (b[0].force + b[1].force + b[2].force).norm() / scale);
      worst = std::max(worst, (b[0].moment + b[1].moment + b[2].moment).norm() / scale);
      const Eigen::Vector3d push = scale * Eigen::Vector3d(0, std::sin(angle), std::cos(angle));
      const Eigen::Vector3d lever(machine.sheet->centre, -machine.sheet->flange * std::cos(angle),
                                  machine.sheet->flange * std::sin(angle));
      worst_push = std::max(worst_push, (b[2].force + push).norm() / scale);
      worst_push = std::max(worst_push, (b[2].moment + lever.cross(push)).norm() / scale);
    }
    const std::string at = std::string(", 0 to 180 deg, setback ") + setback;
    record("", "contract, sheet loads", "rest of force and moment over the push" + at, worst, 0, 1e-12);
    record("", "contract, sheet loads", "apron's share against -F n at the flange, F = m/(a + b cos)" + at, worst_push,
           0, 1e-12);
  }
}

} // namespace
} // namespace bedbow::verification
