// A membrane that tapers: no panel of a case is anything but a rectangle, so the mesh is made here and everything
// after it is the program's own.
#include "solver/model/model.h"
#include "solver/modes/modes.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

constexpr double length = 10, root = 5, tip = 1, thickness = 0.05; // [m]
constexpr int wanted = 6;

Machine steel_sheet() {
  Machine m;
  m.materials.emplace_back();
  m.materials[0].E = 200e9;
  m.materials[0].nu = 0.3;
  m.materials[0].density = 8000;
  m.panels.emplace_back();
  m.panels[0].name = "membrane";
  m.panels[0].thickness = thickness;
  return m;
}

/// In the x-y plane, kept there; its root at x = 0 clamped.
Mesh tapered_membrane(int along) {
  const int across = along / 2;
  Mesh mesh;
  for (int j = 0; j <= across; ++j)
    for (int i = 0; i <= along; ++i) {
      const double x = length * i / along, depth = root + (tip - root) * x / length;
      const int node = static_cast<int>(mesh.nodes.size());
      mesh.nodes.push_back({{x, depth * (static_cast<double>(j) / across - 0.5), 0}, Frame::fixed});
      for (int dof : {2, 3, 4}) mesh.held_dofs.push_back(6 * node + dof);
      if (i == 0)
        for (int dof : {0, 1, 5}) mesh.held_dofs.push_back(6 * node + dof);
    }
  for (int j = 0; j < across; ++j)
    for (int i = 0; i < along; ++i) {
      const int n = j * (along + 1) + i;
      mesh.shells.push_back(
          {{n, n + 1, n + along + 2, n + along + 1}, thickness, 0, {Ref::Kind::panel, BodyKind::bed, 0}});
    }
  return mesh;
}

/// [Hz]
std::array<double, wanted> membrane_frequencies(int along) {
  const Machine machine = steel_sheet();
  const Registries registries = builtin_registries();
  const Model model = make_model(machine, registries, tapered_membrane(along));
  const JointState state = all_closed(model);
  const Modes modes = VibratingMachine(model, state, registries.linear_solvers, false).lowest(wanted);
  EXPECT_EQ(modes.values.size(), wanted);
  EXPECT_LT(modes.residual, 1e-8);
  EXPECT_LT(modes.orthogonality, 1e-8);
  std::array<double, wanted> out{};
  for (int i = 0; i < wanted && i < modes.values.size(); ++i)
    out[i] = std::sqrt(modes.values[i]) / (2 * std::numbers::pi);
  return out;
}

// The root's corners, where stresses have no bound, let frequencies fall with h^1.4 only: three meshes, extrapolated by
// Aitken's rule. What is left is the unevenness of that fall.
TEST(NafemsFv32, TaperedMembrane) {
  const std::array<double, wanted> reference{44.623, 130.03, 162.70, 246.05, 379.90, 391.44};
  const auto coarse = membrane_frequencies(32), middle = membrane_frequencies(64), fine = membrane_frequencies(128);
  for (int i = 0; i < wanted; ++i) {
    const double first = coarse[i] - middle[i], second = middle[i] - fine[i];
    EXPECT_GT(first, second) << "consistent mass: from above, and slower with each mesh";
    EXPECT_GT(second, 0);
    const std::string mode = "in-plane mode " + std::to_string(i + 1);
    const std::string source = "The Standard NAFEMS Benchmarks, TNSB Rev. 3, 1990, FV32";
    record("D7", source, mode + ", extrapolated", fine[i] - second * second / (first - second), reference[i], 5e-4,
           "Hz");
    record("D7", source, mode + ", 128 x 64 elements", fine[i], reference[i], 3e-3, "Hz");
  }
}

} // namespace
} // namespace bedbow::verification
