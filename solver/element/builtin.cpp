// Built-in elements, with the common table.
#include "solver/element/element_entry.h"
#include "solver/element/parameters.h"
#include "solver/element/shell4.h"

#include <Eigen/Geometry>

#include <cmath>

namespace bedbow {

namespace {

// ---- beam ----

BeamData beam_data(const ElementInput& in) {
  const auto& p = in.parameters;
  BeamData d;
  d.E = p.at(0);
  d.G = p.at(1);
  d.density = p.at(2);
  d.section.A = p.at(3);
  d.section.Iyy = p.at(4);
  d.section.Izz = p.at(5);
  d.section.J = p.at(6);
  d.section.Ay = p.at(7);
  d.section.Az = p.at(8);
  return d;
}

struct BeamLine {
  double length;
  Eigen::Matrix3d axes; ///< rows: along, width, height
};

BeamLine beam_line(const ElementInput& in) {
  return {(in.corners.col(1) - in.corners.col(0)).norm(), in.axes.value_or(line_axes(in.corners))};
}

SectionForces forces_of(std::span<const double> s) {
  SectionForces f;
  f.N = s[0];
  f.Vy = s[1];
  f.Vz = s[2];
  f.T = s[3];
  f.My = s[4];
  f.Mz = s[5];
  return f;
}

ElementEntry beam_entry() {
  ElementEntry e;
  e.name = "beam";
  e.description = "two-node shear-flexible beam, exact between its nodes";
  e.source = "Przemieniecki 1968, ch. 5; docs/theory/beams.md";
  e.parameters = {{"E", "Pa", "Young's modulus", 210e9},
                  {"G", "Pa", "shear modulus", 81e9},
                  {"density", "kg/m^3", "mass per volume", 7850},
                  {"A", "m^2", "area", 1.2e-3},
                  {"Iyy", "m^4", "second moment about the width's axis", 3.6e-7},
                  {"Izz", "m^4", "second moment about the height's axis", 4e-8},
                  {"J", "m^4", "torsion constant", 1.26e-7},
                  {"Ay", "m^2", "shear area along the width", 1e-3},
                  {"Az", "m^2", "shear area along the height", 1e-3}};
  Eigen::Matrix3Xd flat(3, 2), skew(3, 2);
  flat << 0, 0.3, 0, 0, 0, 0;
  skew << 0.1, 0.3, -0.2, 0.1, 0, 0.25;
  e.examples = {flat, skew};
  e.stiffness = [](const ElementInput& in) -> Eigen::MatrixXd {
    const BeamLine l = beam_line(in);
    return beam_stiffness_global(beam_data(in), l.length, l.axes);
  };
  e.mass = [](const ElementInput& in, bool lumped) -> Eigen::MatrixXd {
    const BeamLine l = beam_line(in);
    return beam_to_global(beam_mass(beam_data(in), l.length, lumped), l.axes);
  };
  e.geometric = [](const ElementInput& in, std::span<const double> state) -> Eigen::MatrixXd {
    const BeamLine l = beam_line(in);
    return beam_to_global(
        beam_geometric(beam_data(in), l.length, forces_of(state.first(6)), forces_of(state.subspan(6, 6))), l.axes);
  };
  e.load = [](const ElementInput& in, std::span<const double> q) -> Eigen::VectorXd {
    const BeamLine l = beam_line(in);
    const BeamLineLoad local{l.axes * Eigen::Vector3d(q[0], q[1], q[2]), l.axes * Eigen::Vector3d(q[3], q[4], q[5])};
    return beam_to_global(beam_load(beam_data(in), l.length, local), l.axes);
  };
  return e;
}

// ---- shell4 ----

Corners corners(const ElementInput& in) {
  Corners c;
  for (std::size_t i = 0; i < 4; ++i) c[i] = in.corners.col(static_cast<int>(i));
  return c;
}

ShellData shell_data(const ElementInput& in) {
  return {in.parameters.at(0), in.parameters.at(1), in.parameters.at(3), in.parameters.at(2)};
}

ElementEntry shell_entry() {
  ElementEntry e;
  e.name = "shell4";
  e.description = "four-node flat shell: MITC4 bending, membrane with drilling rotations";
  e.source = "Bathe & Dvorkin 1985; Bergan & Nygard 1984; docs/theory/plates.md";
  e.dimension = 2;
  e.nodes = 4;
  e.parameters = {{"E", "Pa", "Young's modulus", 210e9},
                  {"nu", "-", "Poisson's ratio", 0.3},
                  {"density", "kg/m^3", "mass per volume", 7850},
                  {"thickness", "m", "plate thickness", 0.012}};
  Eigen::Matrix3Xd square(3, 4), uneven(3, 4);
  square << 0, .02, .02, 0, 0, 0, .02, .02, 0, 0, 0, 0;
  uneven << 0, .03, .026, -.003, 0, .002, .02, .017, 0, 0, 0, 0;
  const Eigen::Matrix3d turn = Eigen::AngleAxisd(0.9, Eigen::Vector3d(1, -2, 0.5).normalized()).toRotationMatrix();
  e.examples = {square, uneven, turn * uneven};
  e.stiffness = [](const ElementInput& in) -> Eigen::MatrixXd { return shell_stiffness(corners(in), shell_data(in)); };
  e.mass = [](const ElementInput& in, bool lumped) -> Eigen::MatrixXd {
    return shell_mass(corners(in), shell_data(in), lumped);
  };
  e.geometric = [](const ElementInput& in, std::span<const double> s) -> Eigen::MatrixXd {
    std::array<Eigen::Vector3d, 4> n;
    for (std::size_t p = 0; p < 4; ++p) n[p] = {s[8 * p], s[8 * p + 1], s[8 * p + 2]};
    return shell_geometric(corners(in), shell_data(in), n);
  };
  e.load = [](const ElementInput& in, std::span<const double> q) -> Eigen::VectorXd {
    return shell_load(corners(in), {q[0], q[1], q[2]});
  };
  return e;
}

} // namespace

void builtin_elements(Registry<ElementEntry>& elements) {
  elements.add(beam_entry());
  elements.add(shell_entry());
}

} // namespace bedbow
