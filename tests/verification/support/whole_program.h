/// \file
/// Verification through the whole program: a case as text goes through reader, mesher, solver and findings, as a user's
/// file does, and the numbers are taken from what is found.
#pragma once

#include "io/case/case_reader.h"
#include "solver/analysis.h"

#include <Eigen/Core>

#include <string>
#include <vector>

namespace bedbow::verification {

/// Reads and solves a case. A case that is wrong, or can't be solved, fails the running test.
Findings solved(const std::string& text);
/// Solves a machine, likewise.
Findings solved(const Machine& machine);
/// The machine that a text describes.
Machine machine_of(const std::string& text);
/// The whole text of a file of the project, "cases/hive-lid/case.toml".
std::string project_file(const std::string& path);

/// A text with something replaced everywhere; throws std::runtime_error when it is not there.
std::string replaced(std::string text, const std::string& what, const std::string& by);

/// "12.5 mm" with all digits that a double has.
std::string mm(double value);
/// Number with all its digits and a unit, in quotes as TOML wants it.
std::string quantity(double value, const std::string& unit);
/// ["x mm", "y mm", "z mm"]
std::string point(const Eigen::Vector3d& mm);

/// Movement that a dial shows [mm]. \param step index. Fails the test when there is no such dial.
Eigen::Vector3d dial(const Findings& findings, const std::string& name, std::size_t step = 0);
/// Joint of that name in a list; fails the test when there is none.
const JointResult& joint(std::span<const JointResult> list, const std::string& name);
/// Bar or member of that name as a chain of stations.
const BarField& field(const Findings& findings, const std::string& name, std::size_t step = 0);
/// Section forces at x (or at that distance along a member) [m], just after it. \param x at a station.
SectionForces forces_at(const BarField& bar, double x);

/// The bar on which the tabulated cases stand: rectangle 20 x 60 mm of length 1000 mm, E = 210 GPa, nu = 0.3, as a bed
/// whose centroid runs along y = 10, z = -30 mm. \param extra further TOML: supports, loads, dials.
std::string sample_bar(const std::string& extra);
/// The same bending stiffness without shear flexibility, after Euler and Bernoulli. \param length_mm of the bar.
std::string slender_bar(const std::string& extra, double length_mm = 1000);
/// Bending stiffness of both [N mm^2].
inline constexpr double sample_EI = 210000.0 * 360000.0;

/// [[support]] at x [mm] of the only bar's centroid. \param holds "x", "z", ...
std::string support(const std::string& name, double x, const std::string& holds);
/// [[dial]] on the bar's centroid line.
std::string dial_at(const std::string& name, double x);
/// [[load]]: force along z at x [mm, N], or along z over the whole length [N/mm].
std::string force_at(double x, double newton);
std::string uniform_load(double length, double newton_per_mm);

} // namespace bedbow::verification
