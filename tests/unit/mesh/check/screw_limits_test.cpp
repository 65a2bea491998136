#include "mesh/build/mesher.h"
#include "mesh/check/screw_limits.h"
#include "mesh/piece/shapes.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace bedbow {
namespace {

// Three flat bars on each other, 1 m long, with five screws between each two.
Machine three_bars() {
  Machine m;
  Material steel;
  steel.name = "steel";
  steel.E = 210e9;
  steel.nu = 0.3;
  steel.G = steel.E / 2.6;
  m.materials = {steel};
  Body& bed = m.body(BodyKind::bed);
  bed.length = 1;
  bed.edge_bar = 0;
  for (int i = 0; i < 3; ++i) {
    Bar bar;
    bar.name = "bar " + std::to_string(i);
    bar.shape.kind = "rectangle";
    bar.shape.width = 0.05;
    bar.shape.height = 0.01;
    bar.at = {0, -0.01 * i};
    bar.material = 0;
    bar.length = 1;
    bed.bars.push_back(bar);
  }
  for (int i = 0; i < 2; ++i) {
    Screws row;
    row.joins = {Ref{Ref::Kind::bar, BodyKind::bed, i}, Ref{Ref::Kind::bar, BodyKind::bed, i + 1}};
    row.diameter = 0.008;
    row.thread = "M8";
    for (int k = 0; k < 5; ++k) row.x.push_back(0.3 + 0.1 * k);
    m.screws.push_back(row);
  }
  m.solve.element_size = 0.05;
  return m;
}

Mesh meshed(const Machine& m) {
  Registry<ShapeEntry> shapes{"shape"};
  builtin_shapes(shapes);
  return make_mesh(m, shapes);
}

int carrying_along_x(const Mesh& mesh) {
  return static_cast<int>(std::count_if(mesh.joints.begin(), mesh.joints.end(), [](const Joint& j) {
    return j.kind == JointKind::screw && j.stiffness[ux] > 0;
  }));
}

TEST(ScrewLimits, NoSlipWeldsTheRowAndHalfAPitch) {
  const Machine m = three_bars();
  const Mesh mesh = without_slip(m, meshed(m));
  EXPECT_EQ(carrying_along_x(mesh), 0);
  double from = 1, to = 0;
  for (const Joint& j : mesh.joints) {
    EXPECT_EQ(j.kind, JointKind::weld);
    from = std::min(from, j.a.at.x());
    to = std::max(to, j.a.at.x());
  }
  EXPECT_NEAR(from, 0.25, 1e-12);
  EXPECT_NEAR(to, 0.75, 1e-12);
}

TEST(ScrewLimits, RollingLimitOnlyStiffensShear) {
  const Machine m = three_bars();
  const Mesh before = meshed(m);
  const Mesh mesh = without_slip_rolling(m, before);
  ASSERT_EQ(mesh.joints.size(), before.joints.size());
  for (std::size_t i = 0; i < mesh.joints.size(); ++i) {
    const Joint& j = mesh.joints[i];
    EXPECT_EQ(j.kind, JointKind::screw);
    // Beside what a bar gives over one pitch, E A / s, a screw gives nothing. z is across the faces.
    EXPECT_GT(j.stiffness[ux], 1000 * 210e9 * 0.05 * 0.01 / 0.1);
    EXPECT_EQ(j.stiffness[uy], j.stiffness[ux]);
    for (const int axis : {uz, rx, ry, rz}) EXPECT_EQ(j.stiffness[axis], before.joints[i].stiffness[axis]) << axis;
  }
}

TEST(ScrewLimits, NoShearKeepsOneScrewARow) {
  const Machine m = three_bars();
  EXPECT_EQ(carrying_along_x(meshed(m)), 10);
  const Mesh mesh = without_shear(m, meshed(m));
  EXPECT_EQ(carrying_along_x(mesh), 2);
  EXPECT_EQ(mesh.joints.size(), 10U);
  for (const Joint& j : mesh.joints) {
    EXPECT_GT(j.stiffness[uy], 0) << "across the bars the screws still hold";
    EXPECT_GT(j.stiffness[uz], 0);
  }
}

// A second row between the same bars, or a weld, keeps them from sliding already.
TEST(ScrewLimits, NoShearLeavesNoLoop) {
  Machine m = three_bars();
  m.screws.push_back(m.screws.front());
  EXPECT_EQ(carrying_along_x(without_shear(m, meshed(m))), 2);
  Weld weld;
  weld.joins = m.screws.front().joins;
  m.welds = {weld};
  EXPECT_EQ(carrying_along_x(without_shear(m, meshed(m))), 1);
}

} // namespace
} // namespace bedbow
