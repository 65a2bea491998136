#include "io/case/case_reader.h"
#include "solver/assembly/mass_walk.h"
#include "solver/model/model.h"
#include "solver/modes/free_map.h"
#include "solver/modes/mass.h"

#include <gtest/gtest.h>

#include <array>

namespace bedbow {
namespace {

constexpr double bar = 7850 * 0.02 * 0.06 * 1.0, rod = 7850 * 3.14159265358979 / 4 * 0.01 * 0.01 * 0.5,
                 cheek = 7850 * 0.2 * 0.15 * 0.012; // [kg]

const Model& bar_rod_and_cheek() {
  static const std::string text =
      R"(title = "masses"
[material.m]
E = "210 GPa"
nu = 0.3
density = "7850 kg/m^3"
[bed]
length = "1000 mm"
material = "m"
[[bed.bar]]
name = "bar"
model = "beam"
shape = "rectangle"
width = "20 mm"
height = "60 mm"
at = ["0 mm", "0 mm"]
[[member]]
name = "rod"
from = ["0 mm", "0 mm", "100 mm"]
to = ["300 mm", "400 mm", "100 mm"]
shape = "round"
diameter = "10 mm"
material = "m"
[[panel]]
name = "cheek"
corner = ["0 mm", "0 mm", "500 mm"]
edge_a = ["0 mm", "200 mm", "0 mm"]
edge_b = ["0 mm", "0 mm", "150 mm"]
thickness = "12 mm"
material = "m"
)";
  static const Registries registries = builtin_registries();
  static const Machine machine = read_case_text(text, registries).machine; // the model only refers to it
  static const Model model = make_model(machine, registries);
  return model;
}

/// u'Mu of moving everything by one metre along an axis, by turn.
Eigen::Vector3d weighed(const Model& m, bool lumped) {
  const FreeMap free = make_free_map(m.map);
  const auto mass = assemble_mass(m.machine, m.mesh, free.map, m.data, lumped);
  Eigen::Vector3d out = Eigen::Vector3d::Zero();
  for (int axis = 0; axis < 3; ++axis)
    for (std::size_t c = 0; c < mass.size(); ++c) {
      Eigen::VectorXd u = Eigen::VectorXd::Zero(free.size);
      Vector6d along = Vector6d::Zero();
      along[axis] = 1;
      add_rigid_movement(m.mesh, free, c, along, u);
      const Eigen::VectorXd own = u.segment(free.start[c], mass[c].rows());
      out[axis] += own.dot(mass[c].selfadjointView<Eigen::Lower>() * own);
    }
  return out;
}

TEST(Mass, IsThatOfAllPiecesAlongEveryAxis) {
  for (const bool lumped : {false, true}) {
    const Eigen::Vector3d m = weighed(bar_rod_and_cheek(), lumped);
    for (int axis = 0; axis < 3; ++axis) EXPECT_NEAR(m[axis], bar + rod + cheek, 1e-10) << axis << lumped;
  }
}

// Only the rotations of a node hang together, where a member lies askew.
TEST(Mass, LumpedJoinsNoNodes) {
  const Model& m = bar_rod_and_cheek();
  const FreeMap free = make_free_map(m.map);
  const auto mass = assemble_mass(m.machine, m.mesh, free.map, m.data, true);
  for (std::size_t c = 0; c < mass.size(); ++c)
    for (int n : free.map.substructures[c].nodes)
      for (int k = 0; k < 6; ++k) {
        const int column = free.map.dofs[n][k];
        ASSERT_GE(column, 0);
        EXPECT_GT(mass[c].coeff(column, column), 0);
        for (SymmetricMatrix::InnerIterator it(mass[c], column); it; ++it)
          EXPECT_TRUE(it.value() == 0 || it.row() == column || (k > 2 && it.row() < column - k + 6)) << it.row();
      }
}

// "Mass 9.9 kg" for a frame that weighs 23.8: what is summed, what gravity pulls at and what swings came from lists of
// their own. All of it comes by one walk, here with a member that only pulls as well.
TEST(Mass, OneWalkMeetsAllThatHasMass) {
  const Model& m = bar_rod_and_cheek();
  Mesh mesh = m.mesh;
  Joint pulled;
  pulled.kind = JointKind::rod;
  pulled.index = 0;
  pulled.stiffness[0] = 210e9 * rod / 7850 / (0.5 * 0.5); // E A / L
  mesh.joints.push_back(pulled);
  std::array<double, 3> mass{};
  for_each_mass(m.machine, mesh, m.data,
                [&](const MassItem& item) { mass[static_cast<std::size_t>(item.kind)] += item.mass(); });
  EXPECT_NEAR(mass[0], bar + rod, 1e-12); // the member of the model bends, and is a beam
  EXPECT_NEAR(mass[1], cheek, 1e-12);
  EXPECT_NEAR(mass[2], rod, 1e-12);
}

} // namespace
} // namespace bedbow
