// Euler, Prandtl and Michell through the whole program: cases as a user writes them.
#include "tests/verification/modes/vibration.h"
#include "tests/verification/support/record.h"
#include "tests/verification/support/sources.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

using std::numbers::pi;
// A flat bar on edge, 6 x 100 mm, 2 m long, without shear flexibility.
constexpr double E = 210e9, G = E / 2.6, L = 2, A = 600, Iyy = 500e3, Izz = 1800, J = 7200;
const double EIz = E * Izz * 1e-12, GJ = G * J * 1e-12, lateral = std::sqrt(EIz * GJ);
constexpr int elements = 16;
const std::string all = "\"x\", \"y\", \"z\", \"rx\", \"ry\", \"rz\"";

std::string bar(const std::string& extra) {
  return head(210, 0.3, 7850) + member("bar", {0, 0, 0}, {2000, 0, 0}, slender(A, Iyy, Izz, J), elements) + extra;
}

std::string load(const Eigen::Vector3d& at, const Eigen::Vector3d& force, const Eigen::Vector3d& moment = {0, 0, 0}) {
  const auto triple = [](const Eigen::Vector3d& v, const std::string& unit) {
    return "[" + quantity(v.x(), unit) + ", " + quantity(v.y(), unit) + ", " + quantity(v.z(), unit) + "]";
  };
  return "[[load]]\non = \"member.bar\"\nat = " + point(at) + "\nforce = " + triple(force, "N") +
         "\nmoment = " + triple(moment, "N*m") + "\n";
}

double factor(const std::string& text) {
  const Findings f = buckling(text, 1);
  return f.modes->buckling_factors.empty() ? 0 : f.modes->buckling_factors.front();
}

// Cubic elements of length h find P = k^2 EI too high by (k h)^4 / 720; the references have seven digits.
void record_euler_case(const std::string& ends, const std::string& at_start, const std::string& at_end, double c) {
  const std::string text = bar(hold({0, 0, 0}, at_start) + (at_end.empty() ? "" : hold({2000, 0, 0}, at_end)) +
                               load({2000, 0, 0}, {-1, 0, 0}));
  record("E1", "Euler: curioustab.com/equation-eulers-crippling-load-if-68450; holooly.com, Fig. 13-10d", "c, " + ends,
         factor(text) * L * L / EIz, c, 1.1 * std::pow(std::sqrt(c) / elements, 4) / 720 + 1e-7);
}

TEST(EulerColumns, ThroughTheProgram) {
  record_euler_case("pinned at both ends", "\"x\", \"y\", \"z\", \"rx\"", "\"y\", \"z\"", 9.869604);
  record_euler_case("clamped and free", all, "", 2.467401);
  record_euler_case("clamped at both ends", all, "\"y\", \"z\", \"rx\", \"ry\", \"rz\"", 39.478418);
  record_euler_case("clamped and pinned", all, "\"y\", \"z\"", 20.190729);
}

TEST(PrandtlMichell, CantileverOnEdgeKicksOutSideways) {
  const std::string text = bar(hold({0, 0, 0}, all) + load({2000, 0, 0}, {0, 0, -1}));
  const Findings f = buckling(text, 2);
  ASSERT_FALSE(f.modes->buckling_factors.empty());
  record("E2", std::string(stability_of_timoshenko) + "sec. 6.3", "P L^2 / sqrt(EI_z GJ), force at the centroid",
         f.modes->buckling_factors[0] * L * L / lateral, 4.0126, 1e-3);
  EXPECT_EQ(f.modes->buckling_shapes[0].description, "member bar bends along y");
}

// Slope of the critical force with the load's height, Rayleigh's quotient of E2's exact shape: see
// timoshenko_stability_test.cpp, where the factor 1.0254 is derived.
TEST(PrandtlMichell, LoadAboveTheAxisBucklesSooner) {
  const auto at = [](double z) { return factor(bar(hold({0, 0, 0}, all) + load({2000, 0, z}, {0, 0, -1}))); };
  const double drop = (at(-10) - at(10)) * L * L / lateral / (2 * 0.01 / L) / 4.0126;
  record("",
         "Rayleigh quotient of E2's exact shape (derived; " + std::string(stability_of_timoshenko) +
             "sec. 6.3 has it rounded)",
         "drop of P per height of the load", drop, std::sqrt(EIz / GJ) * 1.0254, 5e-3);
}

TEST(PrandtlMichell, CantileverWithEndMomentOfTwoForces) {
  const std::string text =
      bar(hold({0, 0, 0}, all) + load({2000, 0, 50}, {10, 0, 0}) + load({2000, 0, -50}, {-10, 0, 0}));
  record("E4", "EI_z v'' = M (phi_L - phi), GJ phi' = M v' (derived)", "M L / sqrt(EI_z GJ), end moment by two forces",
         factor(text) * L / lateral, pi / 2, 1e-3);
}

TEST(PrandtlMichell, ForkedBeamUnderUniformMoment) {
  const std::string text =
      bar(hold({0, 0, 0}, "\"x\", \"y\", \"z\", \"rx\"") + hold({2000, 0, 0}, "\"y\", \"z\", \"rx\"") +
          load({0, 0, 0}, {0, 0, 0}, {0, -1, 0}) + load({2000, 0, 0}, {0, 0, 0}, {0, 1, 0}));
  record("E5", "narrow bar in pure bending, (pi/L) sqrt(EI_z GJ), expertsmind.com, Critical bending moment",
         "M L / sqrt(EI_z GJ)", factor(text) * L / lateral, pi, 2e-3);
}

// The same cantilever drawn as the bar of a bed: joints as rows, the load on the section's top by a rigid arm.
TEST(PrandtlMichell, BarOfABedBucklesLikeAMember) {
  const auto bed = [](double z) {
    return R"(title = "bed"
[material.m]
E = "210 GPa"
nu = 0.3
density = "7850 kg/m^3"
[solve]
element_size = "125 mm"
[bed]
length = "2 m"
material = "m"
[[bed.bar]]
name = "bar"
)" + slender(A, Iyy, Izz, J) +
           R"(at = ["0 mm", "0 mm"]
[[support]]
bar = "bed.bar"
at = )" + point({0, 0, 0}) +
           "\nholds = [" + all +
           R"(]
[[load]]
on = "bed.bar"
at = )" + point({2000, 0, z}) +
           "\nforce = [\"0 N\", \"0 N\", \"-1 N\"]\n";
  };
  for (double z : {0.0, 30.0}) {
    const double as_member = factor(bar(hold({0, 0, 0}, all) + load({2000, 0, z}, {0, 0, -1})));
    record("", "the same cantilever as a member", "factor with the load at z = " + std::to_string(int(z)) + " mm",
           factor(bed(z)), as_member, 1e-6);
  }
}

// What is pulled does not buckle.
TEST(EulerColumns, TensionHasNoFactor) {
  const Findings f = buckling(bar(hold({0, 0, 0}, all) + load({2000, 0, 0}, {1, 0, 0})), 2);
  EXPECT_TRUE(f.modes->buckling_factors.empty());
}

// A panel that is loaded across itself alone ended the run with "TridiagEigen: eigen decomposition failed", and its
// frequencies were lost. Nothing presses in its plane, so nothing buckles; the rest stands.
TEST(EulerColumns, PanelLoadedAcrossItselfHasNoFactor) {
  const auto shelf = [](const Eigen::Vector3d& edge_b) {
    const Eigen::Vector3d far = edge_b + Eigen::Vector3d(300, 0, 0);
    const auto edge = [&](const Eigen::Vector3d& from, const Eigen::Vector3d& to) {
      return "[[hold]]\nfrom = " + point(from) + "\nto = " + point(to) + "\nholds = [" + all + "]\n";
    };
    return head(210, 0.3, 7850) + "[[panel]]\nname = \"shelf\"\ncorner = " + point({0, 0, 0}) +
           "\nedge_a = " + point({300, 0, 0}) + "\nedge_b = " + point(edge_b) +
           R"(
thickness = "4 mm"
material = "m"
divisions = [6, 5]
)" + edge({0, 0, 0}, edge_b) +
           edge({300, 0, 0}, far) + R"([[load]]
panel = "shelf"
pressure = "2 kPa"
[solve]
modes = 3
)";
  };
  for (const Eigen::Vector3d& edge_b : {Eigen::Vector3d(0, 200, 0), Eigen::Vector3d(0, 120, 160)}) {
    Machine machine = machine_of(shelf(edge_b));
    machine.solve.buckling = 2;
    const Findings f = analyse(machine, builtin_registries());
    EXPECT_EQ(f.status, Status::ok) << f.trouble;
    ASSERT_TRUE(f.modes.has_value());
    EXPECT_TRUE(f.modes->buckling_factors.empty());
    EXPECT_NE(f.modes->buckling_note.find("no buckling"), std::string::npos);
    EXPECT_EQ(f.modes->modes.size(), 3U);
    EXPECT_TRUE(f.verdict.pass);
  }
}

TEST(EulerColumns, FactorUnderTheLimitFailsTheCase) {
  const auto verdict = [](double force, const std::string& limits) {
    return buckling(bar(hold({0, 0, 0}, all) + load({2000, 0, 0}, {-force, 0, 0}) + limits), 1).verdict;
  };
  const double critical = 2.467401 * EIz / (L * L);
  EXPECT_TRUE(verdict(critical / 3.1, "").pass);
  EXPECT_FALSE(verdict(critical / 2.9, "").pass);
  EXPECT_TRUE(verdict(critical / 2.9, "[limits]\nbuckling = 2\n").pass);
  const Verdict v = verdict(critical / 1.5, "[limits]\nbuckling = 2\n");
  ASSERT_EQ(v.reasons.size(), 1U);
  EXPECT_EQ(v.reasons[0].check, "buckling");
  EXPECT_NEAR(v.reasons[0].value, 1.5, 0.005);
}

} // namespace
} // namespace bedbow::verification
