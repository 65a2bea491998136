// The assembled stiffness of a whole machine that nothing holds: just six movements cost nothing, and they are the
// rigid ones, through screws, rigid arms and sections whose shear centre lies off the centroid.
#include "solver/linear/dense.h"
#include "solver/model/model.h"

#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>

namespace bedbow::verification {
namespace {

/// The map with all six movements of every reference node, and all amplitudes of strips, as unknowns: no anchors, no
/// holds.
DofMap unheld(const Mesh& mesh, DofMap map) {
  for (Substructure& c : map.substructures) {
    c.size = 0;
    for (const int n : c.nodes)
      for (int k = 0; k < (mesh.nodes[n].moves() ? 6 : mesh.nodes[n].amplitudes); ++k) map.dofs[n][k] = c.size++;
  }
  return map;
}

/// Columns: the six rigid movements about the origin, on the unknowns of a component.
Eigen::MatrixXd rigid_movements(const Mesh& mesh, const DofMap& map, const Substructure& c) {
  Eigen::MatrixXd r = Eigen::MatrixXd::Zero(c.size, 6);
  for (const int n : c.nodes)
    for (int k = 0; k < (mesh.nodes[n].moves() ? 3 : 0); ++k) { // a flat that moves as a whole does not bend across
      const Eigen::Vector3d e = Eigen::Vector3d::Unit(k), turn = e.cross(mesh.nodes[n].x);
      r(map.dofs[n][k], k) = 1;
      r(map.dofs[n][3 + k], 3 + k) = 1;
      for (int i = 0; i < 3; ++i) r(map.dofs[n][i], 3 + k) += turn[i];
    }
  return r;
}

void expect_six(const std::string& name, const Machine& machine) {
  const Model model = make_model(machine, builtin_registries());
  const DofMap map = unheld(model.mesh, model.map);
  const auto stiffness = assemble_stiffness(machine, model.mesh, map, model.data);
  for (std::size_t c = 0; c < map.substructures.size(); ++c) {
    const Eigen::MatrixXd lower(stiffness[c]);
    const Eigen::MatrixXd K = lower.selfadjointView<Eigen::Lower>();
    const Eigen::MatrixXd R = rigid_movements(model.mesh, map, map.substructures[c]);
    // Scaled by the diagonal, so that N/m and N m/rad weigh alike.
    const Eigen::VectorXd d = K.diagonal().cwiseSqrt().cwiseInverse();
    const Eigen::MatrixXd scaled = d.asDiagonal() * K * d.asDiagonal();
    const Eigen::MatrixXd moved = d.cwiseInverse().asDiagonal() * R;
    const std::string part = name + ", " + map.substructures[c].name;
    record("", "rigid movements of a free structure", part + ": force of rigid movements, scaled",
           (scaled * moved).cwiseAbs().maxCoeff() / moved.cwiseAbs().maxCoeff(), 0, 1e-10);
    const Eigen::VectorXd values = symmetric_eigenvalues(scaled);
    EXPECT_LT(std::abs(values[5]), 1e-12) << part;
    EXPECT_GT(values[6], 1e4 * std::abs(values[5])) << part;
    // Scaled by the diagonal, welds as good as rigid leave less of a bar's own stiffness than of rounding's 1e-16.
    EXPECT_GT(values[6], 1e-10) << part;
  }
}

TEST(RigidMovements, OfTheAssembledFreeMachine) {
  expect_six("hive-lid", machine_of(replaced(project_file("cases/hive-lid/case.toml"), "[solve]\n",
                                             "[solve]\nelement_size = \"100 mm\"\n")));
  expect_six("channel and angle", machine_of(R"([bed]
length = "600 mm"
material = "S275JR"
[[bed.bar]]
name = "c"
shape = "channel"
width = "40 mm"
height = "80 mm"
wall = "5 mm"
at = ["30 mm", "-40 mm"]
[[bed.bar]]
name = "a"
shape = "angle"
width = "50 mm"
height = "40 mm"
wall = "5 mm"
at = ["80 mm", "-20 mm"]
[[weld]]
joins = ["bed.c", "bed.a"]
[solve]
element_size = "100 mm"
)"));
}

} // namespace
} // namespace bedbow::verification
