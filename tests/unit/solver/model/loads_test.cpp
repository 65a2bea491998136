#include "solver/model/loads.h"
#include "solver/registry/registries.h"

#include "tests/unit/solver/assembly/hand_mesh.h"
#include <Eigen/Geometry>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {
namespace {

constexpr double standard_gravity = 9.80665; // by definition

/// A mesh with its loads, and the sum of these about the origin: force, moment.
struct Loaded {
  explicit Loaded(const test::HandMesh& mesh)
      : h(mesh)
      , map(make_dof_map(h.machine, h.mesh))
      , data(make_element_data(h.machine, h.mesh, builtin_registries().elements))
      , builder(h.machine, h.mesh, map, data)
      , loads(builder.empty()) {}
  [[nodiscard]] Vector6d sum() const {
    Vector6d out = Vector6d::Zero();
    for (std::size_t i = 0; i < h.mesh.nodes.size(); ++i) {
      const Eigen::Vector3d force = loads.nodal[i].head<3>(), moment = loads.nodal[i].tail<3>();
      out.head<3>() += force;
      out.tail<3>() += moment + h.mesh.nodes[i].x.cross(force);
    }
    return out;
  }
  const test::HandMesh& h;
  DofMap map;
  ElementData data;
  LoadBuilder builder;
  StepLoads loads;
};

Vector6d wrench(const Eigen::Vector3d& force, const Eigen::Vector3d& at,
                const Eigen::Vector3d& moment = Eigen::Vector3d::Zero()) {
  Vector6d out;
  out << force, at.cross(force) + moment;
  return out;
}

void expect_equal(const Vector6d& found, const Vector6d& wanted) {
  EXPECT_LT((found - wanted).norm(), 1e-10 * wanted.norm()) << found.transpose() << "\nand not\n" << wanted.transpose();
}

const Ref first_bar{Ref::Kind::bar, BodyKind::bed, 0};

TEST(Loads, LineLoadOffTheAxis) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.2, 0.5, 1}, 0.1, -0.2);
  Loaded l(h);
  Load load;
  load.kind = Load::Kind::line;
  load.on = first_bar;
  load.from = {0.2, 0.15, 0.05};
  load.to = {1, 0.15, 0.05};
  load.force = {300, -200, -1000};
  l.builder.add_given(load, 0, l.loads);
  expect_equal(l.sum(), wrench(load.force * 0.8, {0.6, 0.15, 0.05}));
  EXPECT_TRUE(l.loads.nodal[0].isZero(0)) << "it begins at the second node";
  EXPECT_NEAR(l.loads.greatest, load.force.norm() * 0.8, 1e-9) << "the whole load, however many elements share it";
  // An element with fixed ends takes half of it at either; the couple m that q_x makes with its arm adds -m / (1 +
  // phi).
  const double q = load.force.z(), m = load.force.x() * 0.25;
  const double phi = 12 * test::hand_E * test::hand_Iyy / (test::hand_G * test::hand_As * 0.5 * 0.5);
  EXPECT_NEAR(l.loads.nodal[3][uz], q * 0.25 - m / (1 + phi), 1e-9);
  EXPECT_NEAR(l.loads.beams[0].force.norm(), 0, 0);
  EXPECT_NEAR(l.loads.beams[2].force.z(), q, 1e-9);
}

TEST(Loads, ForceAndMomentAtAPoint) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.2, 0.5, 1}, 0.1, -0.2);
  Loaded l(h);
  Load load;
  load.on = first_bar;
  load.from = load.to = {0.35, 0.02, 0.3}; // between two nodes
  load.force = {50, -70, 90};
  load.moment = {3, -2, 5};
  l.builder.add_given(load, 0, l.loads);
  expect_equal(l.sum(), wrench(load.force, load.from, load.moment));
}

TEST(Loads, WeightIsDensityTimesVolume) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 0.2, 0.5, 1}, 0.1, -0.2);
  Loaded l(h);
  l.builder.add_gravity(0, l.loads);
  const double weight = test::hand_density * test::hand_A * 1 * standard_gravity;
  expect_equal(l.sum(), wrench({0, 0, -weight}, {0.5, 0.1, -0.2}));
  Loaded none(h);
  none.builder.add_applied_loads(0, none.loads);
  EXPECT_EQ(none.sum().norm(), 0) << "not requested by the case";
}

// In the apron's own axes, which turn by the angle, weight is inclined; its magnitude stays.
TEST(Loads, WeightOfATurnedApron) {
  test::HandMesh h;
  h.add_bar(BodyKind::apron, {0, 1}, -0.1, -0.2);
  Loaded l(h);
  l.builder.add_gravity(std::numbers::pi / 2, l.loads);
  const Vector6d sum = l.sum();
  const double weight = test::hand_density * test::hand_A * standard_gravity;
  EXPECT_NEAR(std::abs(sum[uy]), weight, 1e-9 * weight);
  EXPECT_NEAR(sum[uz], 0, 1e-9 * weight);
}

// The sheet's moment m per length: the apron's push times the flange, and the grip's couple; all of it in balance.
TEST(Loads, SheetMomentIsACouple) {
  test::HandMesh h;
  for (const BodyKind k : all_bodies) h.add_bar(k, {0, 0.2, 0.8, 1}, 0.01, k == BodyKind::clamp ? 0.03 : -0.03);
  for (const BodyKind k : all_bodies) h.machine.body(k).edge_bar = 0;
  h.machine.nose = {0, 0.003, 0, 0.015, {}};
  Sheet sheet;
  sheet.width = 0.6;
  sheet.centre = 0.5;
  sheet.flange = 0.025;
  sheet.grip = 0.016;
  h.machine.sheet = sheet;
  const double m = 400; // N m per m
  const SheetLoads s = sheet_loads(sheet, m, 0.003);
  Loaded l(h);
  double couple = 0, push = 0, up = 0;
  for (const SheetLine& line : l.builder.sheet_lines(s, 0)) {
    if (line.what.starts_with("grip")) couple += line.y * line.q.z();
    if (line.what == "push on the apron") push += (line.y - 0.003) * line.q.z(); // about the nose's edge
    up += line.q.z();
  }
  EXPECT_NEAR(std::abs(couple), m, 1e-9 * m);
  EXPECT_NEAR(push, m, 1e-9 * m); // pushed down in front of the bend line: turned back about x
  EXPECT_NEAR(up, 0, 1e-9 * m);
  l.builder.add_sheet(s, 0, l.loads);
  EXPECT_LT(l.sum().norm(), 1e-9 * m);
  // At a right angle, with the apron's share turned into space.
  Loaded turned(h);
  turned.builder.add_sheet(s, std::numbers::pi / 2, turned.loads);
  Eigen::Vector3d on_bed_and_clamp = Eigen::Vector3d::Zero();
  for (std::size_t i = 0; i < 8; ++i) on_bed_and_clamp += turned.loads.nodal[i].head<3>();
  EXPECT_NEAR(on_bed_and_clamp.y(), m / sheet.flange * sheet.width, 1e-9 * m / sheet.flange);
  EXPECT_NEAR(on_bed_and_clamp.z(), 0, 1e-9 * m / sheet.flange);
}

TEST(Loads, GatherAndResultant) {
  test::HandMesh h;
  h.add_bar(BodyKind::bed, {0, 1});
  h.clamp(0);
  Loaded l(h);
  l.builder.add_point(h.place(1, {0, 0.1, 0}), {0, 0, 40}, {0, 0, 0}, l.loads);
  const Substructure& c = l.map.substructures[0];
  const Eigen::VectorXd f = gather(l.map, c, l.loads);
  EXPECT_EQ(f.size(), 6);
  EXPECT_DOUBLE_EQ(f[l.map.dofs[1][uz]], 40);
  EXPECT_DOUBLE_EQ(f[l.map.dofs[1][rx]], 4); // 0.1 m along y times 40 N along z
  const Vector6d r = resultant(h.mesh, c, l.loads);
  EXPECT_DOUBLE_EQ(r[uz], 40);
  EXPECT_DOUBLE_EQ(r[ry], -20); // half a metre from the centre
}

} // namespace
} // namespace bedbow
