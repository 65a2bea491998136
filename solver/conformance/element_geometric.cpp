// Geometric stiffness of an element: forces that turn with the body, and critical loads in closed form.
#include "mesh/piece/si.h"
#include "solver/conformance/element_terms.h"
#include "solver/conformance/states.h"
#include "solver/linear/dense.h"

#include <Eigen/Core>
#include <Eigen/Geometry>

#include <cmath>
#include <numbers>

namespace bedbow::conformance {

namespace {

using Eigen::Index;
using Eigen::Matrix3d;
using Eigen::Matrix3Xd;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;

constexpr double pi = std::numbers::pi;
constexpr int pieces = 32;
/// Slopes or rotations that are linear in each piece have an error of (pi / 32)^2 / 12 = 0.8 per mille.
constexpr double coarse = 2e-3;

enum Dof { ux, uy, uz, rx, ry, rz };

/// A uniform state. \param one 6 values along a line, 8 over a surface.
std::vector<double> uniform(const std::vector<double>& one, std::size_t places) {
  std::vector<double> out;
  for (std::size_t i = 0; i < places; ++i) out.insert(out.end(), one.begin(), one.end());
  return out;
}

double shear_modulus(const ElementEntry& e) {
  return example_of(e, "G", example_of(e, "E", nan) / (2 * (1 + example_of(e, "nu", nan))));
}

/// Nodal forces in equilibrium, and the corresponding state.
struct Stressed {
  VectorXd forces;
  std::vector<double> state;
};

/// Along a line a pull of 1 N; over a surface one of three constant membrane strains, by the element's own stiffness.
Stressed stressed(const ElementEntry& e, int which, const Matrix3Xd& corners) {
  if (e.dimension == 1) {
    VectorXd f = VectorXd::Zero(12);
    f[0] = -1;
    f[6] = 1;
    return {f, uniform({1, 0, 0, 0, 0, 0}, 2)};
  }
  const double E = example_of(e, "E", nan), nu = example_of(e, "nu", nan), t = example_of(e, "thickness", nan);
  const double stiff = 1e-4 * E * t / (1 - nu * nu);
  const std::vector<std::vector<double>> n{
      {stiff, nu * stiff, 0}, {nu * stiff, stiff, 0}, {0, 0, (1 - nu) / 2 * stiff}};
  VectorXd u(6 * corners.cols());
  for (Index i = 0; i < corners.cols(); ++i) u.segment<6>(6 * i) = 1e-4 * constant_state(2, which, corners.col(i));
  std::vector<double> one = n[static_cast<std::size_t>(which)];
  one.resize(8, 0);
  return {e.stiffness(input_of(e, corners)) * u, uniform(one, 4)};
}

/// Geometric stiffness times a small turn is the difference of the turned forces.
void check_forces_turn(const ElementEntry& e, Conformance& out) {
  const Matrix3Xd& corners = e.examples.front(); // in the x-y plane, along x
  double error = 0, skew = 0;
  for (int which = 0; which < (e.dimension == 1 ? 1 : 3); ++which) {
    const auto [f, state] = stressed(e, which, corners);
    const MatrixXd Kg = e.geometric(input_of(e, corners), state);
    skew = std::max(skew, (Kg - Kg.transpose()).cwiseAbs().maxCoeff() / Kg.cwiseAbs().maxCoeff());
    for (int axis = 0; axis < 3; ++axis) {
      constexpr double small = 1e-5;
      const Matrix3d to = Eigen::AngleAxisd(small, Vector3d::Unit(axis)).toRotationMatrix();
      const VectorXd change = Kg * rigid(corners, 3 + axis);
      for (Index i = 0; i < corners.cols(); ++i) {
        const Vector3d force = f.segment<3>(6 * i);
        const Vector3d difference = (to * force - to.transpose() * force) / (2 * small);
        const double found = (change.segment<3>(6 * i) - difference).norm() / f.norm();
        if (!(found <= error)) error = found;
      }
    }
  }
  out.at_most("geometric stiffness symmetric: |K - K'| / |K|", skew, 1e-12);
  out.at_most("geometric stiffness turns the forces", error, 1e-8);
}

/// A straight row of elements of unit width. \param axis 0: along x; 1: along y (surfaces only).
Patch row_of(int dimension, int axis, double length) {
  Patch p;
  const double h = length / pieces;
  const int wide = dimension == 1 ? 1 : 2;
  p.nodes = Matrix3Xd::Zero(3, wide * (pieces + 1));
  for (int i = 0; i <= pieces; ++i)
    for (int j = 0; j < wide; ++j) {
      p.nodes(axis, wide * i + j) = i * h;
      p.nodes(1 - axis, wide * i + j) = j * h;
    }
  for (int i = 0; i < pieces; ++i) {
    if (dimension == 1)
      p.elements.push_back({i, i + 1});
    else if (axis == 0)
      p.elements.push_back({2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1});
    else
      p.elements.push_back({2 * i, 2 * i + 1, 2 * i + 3, 2 * i + 2});
  }
  p.size = length;
  return p;
}

/// Lowest load factor of a row. \param moving dofs that it has. \param held of these, those that are held at both ends.
double critical(const ElementEntry& e, const Patch& row, const std::vector<double>& state,
                const std::vector<int>& moving, const std::vector<int>& held) {
  const Index wide = row.nodes.cols() / (pieces + 1), count = row.nodes.cols();
  std::vector<Index> free;
  for (Index i = 0; i < count; ++i)
    for (const int k : moving) {
      const bool end = i < wide || i >= count - wide;
      if (!end || std::ranges::find(held, k) == held.end()) free.push_back(6 * i + k);
    }
  const MatrixXd K = patch_stiffness(e, row)(free, free);
  const MatrixXd G =
      patch_sum(row, [&](const Matrix3Xd& corners) { return e.geometric(input_of(e, corners), state); })(free, free);
  // 1 / factor is the greatest eigenvalue: -G v = (1 / factor) K v.
  const VectorXd values = generalized_eigenvalues(-(G + G.transpose()) / 2, (K + K.transpose()) / 2);
  return values.size() > 0 ? 1 / values[values.size() - 1] : nan;
}

/// Euler's load, with shear by Engesser: P / (1 + P / shear).
double column_load(double bending, double shear, double length) {
  const double euler = pi * pi * bending / (length * length);
  return std::isnan(shear) ? euler : euler / (1 + euler / shear);
}

void check_column(const ElementEntry& e, Conformance& out) {
  constexpr double length = 3;
  const auto of = [&](const char* name) { return example_of(e, name, nan); };
  const double E = of("E"), G = shear_modulus(e);
  const Patch row = row_of(1, 0, length);
  const std::vector<double> push = uniform({-1, 0, 0, 0, 0, 0}, 2), moment = uniform({0, 0, 0, 0, 1, 0}, 2);
  const double about_y = column_load(E * of("Iyy"), G * of("Az"), length);
  const double about_z = column_load(E * of("Izz"), G * of("Ay"), length);
  const double y = critical(e, row, push, {uz, ry}, {uz}), z = critical(e, row, push, {uy, rz}, {uy});
  const double lateral = critical(e, row, moment, {uy, rz, rx}, {uy, rx});
  out.at_most("Euler's load of a column, about y", std::abs(y / about_y - 1), coarse);
  out.at_most("Euler's load of a column, about z", std::abs(z / about_z - 1), coarse);
  out.at_most("lateral buckling moment of a beam between forks",
              std::abs(lateral / std::sqrt(about_z * G * of("J")) - 1), coarse);
}

void check_plate(const ElementEntry& e, Conformance& out) {
  constexpr double length = 1;
  const double E = example_of(e, "E", nan), nu = example_of(e, "nu", nan), t = example_of(e, "thickness", nan);
  const double due = column_load(E * t * t * t / 12 / (1 - nu * nu), 5.0 / 6 * shear_modulus(e) * t, length);
  const std::vector<double> along_x{-1, 0, 0, 0, 0, 0, 0, 0}, along_y{0, -1, 0, 0, 0, 0, 0, 0};
  const double x = critical(e, row_of(2, 0, length), uniform(along_x, 4), {uz, ry}, {uz});
  const double y = critical(e, row_of(2, 1, length), uniform(along_y, 4), {uz, rx}, {uz});
  // The critical() of a row of the width h: forces and stiffness both grow with it.
  out.at_most("critical compression of a wide plate along x", std::abs(x / due - 1), coarse);
  out.at_most("critical compression of a wide plate along y", std::abs(y / due - 1), coarse);
}

} // namespace

int state_size(int dimension) {
  return dimension == 1 ? 12 : 32;
}

int load_size(int dimension) {
  return dimension == 1 ? 6 : 3;
}

void check_geometric(const ElementEntry& e, Conformance& out) {
  check_forces_turn(e, out);
  if (e.dimension == 1)
    check_column(e, out);
  else
    check_plate(e, out);
}

} // namespace bedbow::conformance
