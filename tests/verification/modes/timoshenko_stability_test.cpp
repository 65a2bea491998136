// Buckling of single members: Euler's columns, lateral-torsional buckling of narrow bars, torque.
#include "tests/verification/beams/beam_column.h"
#include "tests/verification/support/record.h"
#include "tests/verification/support/sources.h"
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace bedbow::verification {
namespace {

using std::numbers::pi;
constexpr double bar_length = 2;

// A flat bar on edge, 6 x 100 mm. No shear flexibility, as in the references; Iyy far above Izz, so that the formulas'
// neglect of bending before buckling holds as it does in linear buckling.
BeamData flat_bar() {
  const double b = 0.006, h = 0.1;
  BeamData d;
  d.E = 210e9;
  d.G = 80e9;
  d.section.A = b * h;
  d.section.Iyy = b * h * h * h / 12;
  d.section.Izz = h * b * b * b / 12;
  d.section.J = h * b * b * b / 3;
  d.section.Ay = d.section.Az = std::numeric_limits<double>::infinity();
  return d;
}

double lateral_unit() {
  return std::sqrt(flat_bar().E * flat_bar().section.Izz * flat_bar().G * flat_bar().section.J);
}

constexpr int euler_elements = 12;

double euler_factor(std::initializer_list<int> at_start, std::initializer_list<int> at_end) {
  BeamColumn column(flat_bar(), bar_length, euler_elements);
  column.hold(0, at_start);
  column.hold(column.last(), at_end);
  Eigen::VectorXd load = Eigen::VectorXd::Zero(column.stiffness.rows());
  load(column.dof(column.last(), 0)) = -1;
  column.add_state(load);
  return column.buckling_factor() * bar_length * bar_length / (column.data.E * column.data.section.Izz);
}

// Printed there: effective lengths L, 2 L and L/2; for a column clamped and pinned tan z = z and 20.19. The digits are
// those of pi^2 and z^2.
const char* const eulers = "Euler: curioustab.com/equation-eulers-crippling-load-if-68450; holooly.com, Fig. 13-10d";

// Cubic elements of length h find P = k^2 EI too high by (k h)^4 / 720; the references have seven digits.
void record_euler(const std::string& ends, double found, double c) {
  const double kh = std::sqrt(c) / euler_elements;
  record("E1", eulers, "c, " + ends, found, c, 1.1 * std::pow(kh, 4) / 720 + 1e-7);
}

TEST(TimoshenkoGere, EulersColumns) {
  record_euler("pinned at both ends", euler_factor({0, 1, 2, 3}, {1, 2}), 9.869604);
  record_euler("clamped and free", euler_factor({0, 1, 2, 3, 4, 5}, {}), 2.467401);
  record_euler("clamped at both ends", euler_factor({0, 1, 2, 3, 4, 5}, {1, 2, 3, 4, 5}), 39.478418);
  record_euler("clamped and pinned", euler_factor({0, 1, 2, 3, 4, 5}, {1, 2}), 20.190729);
}

TEST(TimoshenkoGere, ShearFlexibleColumn) {
  BeamData d = flat_bar();
  d.section.Ay = 1e-3 * d.section.A; // as soft in shear as a laced column
  BeamColumn column(d, bar_length, 16);
  column.hold(0, {0, 1, 2, 3});
  column.hold(column.last(), {1, 2});
  Eigen::VectorXd load = Eigen::VectorXd::Zero(column.stiffness.rows());
  load(column.dof(column.last(), 0)) = -1;
  column.add_state(load);
  const double pe = pi * pi * d.E * d.section.Izz / (bar_length * bar_length);
  record("", "P_e / (1 + P_e / GA_s), JSCE, Structural Mechanics Formulas, 1986, as in saecanet.com",
         "pinned column with shear, P_cr", column.buckling_factor(), pe / (1 + pe / (d.G * d.section.Ay)), 1e-4, "N");
}

TEST(TimoshenkoGere, CantileverWithTipForce) {
  BeamColumn beam(flat_bar(), bar_length, 16);
  beam.hold(0, {0, 1, 2, 3, 4, 5});
  Eigen::VectorXd load = Eigen::VectorXd::Zero(beam.stiffness.rows());
  load(beam.dof(beam.last(), 2)) = -1;
  beam.add_state(load);
  record("E2", std::string(stability_of_timoshenko) + "sec. 6.3", "P L^2 / sqrt(EI_z GJ), force at the centroid",
         beam.buckling_factor() * bar_length * bar_length / lateral_unit(), 4.0126, 1e-3);
}

// Slope of the critical force with the load's height a, from Rayleigh's quotient of the exact shape of E2:
// dP / P = -(a / L) sqrt(EI_z / GJ) c beta(0)^2 / (2 integral beta'^2), beta'' + c^2 x^2 beta = 0 as a power series
// from the tip, beta = sum a_n x^4n. The book (from memory) has 1 for the last factor, which is 1.0254.
double height_factor() {
  const double c = 4.0125987;
  std::vector<double> a = {1};
  for (int n = 1; n < 20; ++n) a.push_back(-c * c * a.back() / (4.0 * n * (4.0 * n - 1)));
  double integral = 0;
  for (int m = 1; m < 20; ++m)
    for (int n = 1; n < 20; ++n) integral += a[m] * a[n] * 16.0 * m * n / (4.0 * (m + n) - 1);
  return c / (2 * integral);
}

TEST(TimoshenkoGere, CantileverWithTipForceAboveTheAxis) {
  const double a = 0.01;
  const auto factor = [](double height) {
    BeamColumn beam(flat_bar(), bar_length, 32);
    beam.hold(0, {0, 1, 2, 3, 4, 5});
    Eigen::VectorXd load = Eigen::VectorXd::Zero(beam.stiffness.rows());
    load(beam.dof(beam.last(), 2)) = -1;
    beam.add_state(load);
    beam.geometric.block<3, 3>(beam.dof(beam.last(), 3), beam.dof(beam.last(), 3)) +=
        beam_load_height({0, 0, -1}, {0, 0, height});
    return beam.buckling_factor() * bar_length * bar_length / lateral_unit();
  };
  const BeamData d = flat_bar();
  const double ratio = std::sqrt(d.E * d.section.Izz / (d.G * d.section.J));
  record("",
         "Rayleigh quotient of E2's exact shape (derived; " + std::string(stability_of_timoshenko) +
             "sec. 6.3 has it rounded)",
         "drop of P per height of the load", (factor(-a) - factor(a)) / (2 * a / bar_length) / 4.0126,
         ratio * height_factor(), 2e-3);
}

// An end moment made by two forces on a rigid cross-piece keeps their direction; a semitangential one, the element's
// own, turns half-way with the end and needs twice as much.
TEST(TimoshenkoGere, CantileverWithEndMoment) {
  const double arm = 0.05;
  for (const bool forces : {true, false}) {
    BeamColumn beam(flat_bar(), bar_length, 16);
    beam.hold(0, {0, 1, 2, 3, 4, 5});
    Eigen::VectorXd load = Eigen::VectorXd::Zero(beam.stiffness.rows());
    load(beam.dof(beam.last(), 4)) = 1;
    beam.add_state(load);
    const int r = beam.dof(beam.last(), 3);
    const double F = 1 / (2 * arm);
    if (forces)
      beam.geometric.block<3, 3>(r, r) +=
          beam_load_height({F, 0, 0}, {0, 0, arm}) + beam_load_height({-F, 0, 0}, {0, 0, -arm});
    const double found = beam.buckling_factor() * bar_length / lateral_unit();
    if (forces)
      record("E4", "EI_z v'' = M (phi_L - phi), GJ phi' = M v' (derived)",
             "M L / sqrt(EI_z GJ), end moment by two forces", found, pi / 2, 1e-3);
    else
      record("", "closed form, docs/theory/buckling.md", "M L / sqrt(EI_z GJ), semitangential end moment", found, pi,
             2e-3);
  }
}

TEST(TimoshenkoGere, ForkedBeamUnderUniformMoment) {
  BeamColumn beam(flat_bar(), bar_length, 16);
  beam.hold(0, {0, 1, 2, 3});
  beam.hold(beam.last(), {1, 2, 3});
  Eigen::VectorXd load = Eigen::VectorXd::Zero(beam.stiffness.rows());
  load(beam.dof(0, 4)) = -1;
  load(beam.dof(beam.last(), 4)) = 1;
  beam.add_state(load);
  record("E5", "narrow bar in pure bending, (pi/L) sqrt(EI_z GJ), expertsmind.com, Critical bending moment",
         "M L / sqrt(EI_z GJ)", beam.buckling_factor() * bar_length / lateral_unit(), pi, 2e-3);
}

// Twisting column: Wagner's term alone, P = GJ A / I_p, clear of bending by a short length.
TEST(TimoshenkoGere, TorsionalBucklingOfAShortColumn) {
  BeamData d = flat_bar();
  d.section.Izz *= 1e6;
  d.section.Iyy *= 1e6;
  const double ip = d.section.Iyy + d.section.Izz;
  BeamColumn column(d, bar_length, 8);
  column.hold(0, {0, 1, 2, 3, 4, 5});
  Eigen::VectorXd load = Eigen::VectorXd::Zero(column.stiffness.rows());
  load(column.dof(column.last(), 0)) = -1;
  column.add_state(load);
  record("", "Megson, ch. 8, p. 286 (issuhub.com/view/index/5824), without warping: sigma = GJ / I_p",
         "torsional buckling load", column.buckling_factor(), d.G * d.section.J * d.section.A / ip, 1e-9, "N");
}

// Shaft clamped at both ends under torque: the ends do not turn, so it does not matter how the torque follows.
// tan z = z, z = T L / 2 EI = 4.493409 (derived in docs/theory/buckling.md).
TEST(TimoshenkoGere, ClampedShaftUnderTorque) {
  BeamData d = flat_bar();
  d.section.Iyy = d.section.Izz;
  BeamColumn shaft(d, bar_length, 16);
  shaft.hold(0, {0, 1, 2, 3, 4, 5});
  shaft.hold(shaft.last(), {1, 2, 4, 5});
  Eigen::VectorXd load = Eigen::VectorXd::Zero(shaft.stiffness.rows());
  load(shaft.dof(shaft.last(), 3)) = 1;
  shaft.add_state(load);
  record("", "closed form tan z = z, docs/theory/buckling.md", "T L / EI, clamped shaft",
         shaft.buckling_factor() * bar_length / (d.E * d.section.Izz), 2 * 4.493409, 1e-3);
}

} // namespace
} // namespace bedbow::verification
