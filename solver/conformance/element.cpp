// The conformance suite of element formulations.
#include "solver/conformance/conformance.h"
#include "solver/conformance/element_terms.h"
#include "solver/conformance/states.h"
#include "solver/linear/dense.h"

#include <Eigen/Core>
#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

using namespace conformance;
using Eigen::Index;
using Eigen::Matrix3d;
using Eigen::Matrix3Xd;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;

double largest(const MatrixXd& m) {
  return m.cwiseAbs().maxCoeff();
}

/// Whether all matrices have the extents that the element declares; the first that does not ends the suite.
bool declared_extents(const ElementEntry& e, Conformance& out) {
  const Index n = static_cast<Index>(e.nodes) * e.dofs_per_node;
  for (const Matrix3Xd& corners : e.examples) {
    const ElementInput in = input_of(e, corners);
    std::vector<MatrixXd> all{e.stiffness(in)};
    if (e.mass) all.insert(all.end(), {e.mass(in, false), e.mass(in, true)});
    const std::vector<double> state(static_cast<std::size_t>(state_size(e.dimension)), 1);
    if (e.geometric) all.push_back(e.geometric(in, state));
    for (const MatrixXd& m : all) {
      if (m.rows() == n && m.cols() == n && m.allFinite()) continue;
      out.failed("declared extents, finite", std::to_string(m.rows()) + " x " + std::to_string(m.cols()) +
                                                 ", expected " + std::to_string(n) + " x " + std::to_string(n) +
                                                 " numbers");
      return false;
    }
    if (e.load) {
      const std::vector<double> load(static_cast<std::size_t>(load_size(e.dimension)), 1);
      if (const VectorXd f = e.load(in, load); f.size() != n || !f.allFinite()) {
        out.failed("declared extents, finite",
                   std::to_string(f.size()) + " loads, expected " + std::to_string(n) + " numbers");
        return false;
      }
    }
  }
  out.at_most("declared extents, finite", 0, 0);
  return !e.examples.empty();
}

/// Symmetry, rigid-body modes, eigenvalues.
void check_matrix(const ElementEntry& e, Conformance& out) {
  double skew = 0, held = 0, least = 0, sixth = 0, seventh = INFINITY;
  for (const Matrix3Xd& corners : e.examples) {
    const MatrixXd K = e.stiffness(input_of(e, corners));
    const double norm = largest(K);
    skew = std::max(skew, largest(K - K.transpose()) / norm);
    for (int i = 0; i < 6; ++i) held = std::max(held, largest(K * rigid(corners, i)) / norm);
    const VectorXd v = symmetric_eigenvalues((K + K.transpose()) / 2);
    const double most = v.cwiseAbs().maxCoeff();
    least = std::max(least, -v[0] / most);
    sixth = std::max(sixth, v[5] / most);
    seventh = std::min(seventh, v[6] / most);
  }
  out.at_most("symmetric: |K - K'| / |K|", skew, 1e-12);
  out.at_most("rigid-body modes are free: |K r| / |K|", held, 1e-11);
  out.at_most("no negative eigenvalue: -least / greatest", least, 1e-11);
  out.at_most("six eigenvalues vanish: sixth / greatest", sixth, 1e-11);
  out.at_least("and no more: seventh / greatest", seventh, 1e-9);
}

/// The same element translated and rotated: its matrix rotates with it.
void check_turning(const ElementEntry& e, Conformance& out) {
  double turned = 0, moved = 0;
  const Matrix3d R = Eigen::AngleAxisd(1.1, Vector3d(1, -2, 0.5).normalized()).toRotationMatrix();
  for (const Matrix3Xd& corners : e.examples) {
    ElementInput in = input_of(e, corners);
    if (e.dimension == 1) in.axes = line_axes(corners);
    const MatrixXd K = e.stiffness(in);
    ElementInput there = in;
    there.corners.colwise() += Vector3d(0.4, -0.3, 0.2);
    moved = std::max(moved, largest(e.stiffness(there) - K) / largest(K));
    ElementInput rotated = in;
    rotated.corners = R * corners;
    if (in.axes) rotated.axes = *in.axes * R.transpose();
    MatrixXd T = MatrixXd::Zero(K.rows(), K.cols());
    for (Index i = 0; i + 3 <= K.rows(); i += 3) T.block<3, 3>(i, i) = R;
    turned = std::max(turned, largest(e.stiffness(rotated) - T * K * T.transpose()) / largest(K));
  }
  out.at_most("the same anywhere: |K(x + d) - K| / |K|", moved, 1e-9);
  out.at_most("turns with the body: |K(Rx) - R K R'| / |K|", turned, 1e-9);
}

VectorXd state_of(const ElementEntry& e, int which, const Matrix3Xd& nodes) {
  VectorXd u(6 * nodes.cols());
  for (Index i = 0; i < nodes.cols(); ++i) u.segment<6>(6 * i) = constant_state(e.dimension, which, nodes.col(i));
  return u;
}

/// Displacements of the inner nodes when the outer ones have those of a constant state. \return error, relative.
double patch_error(const MatrixXd& K, const Patch& p, const VectorXd& u) {
  std::vector<Index> inner, outer;
  for (Index i = 0; i < p.nodes.cols(); ++i)
    for (Index k = 0; k < 6; ++k)
      (std::ranges::find(p.inner, static_cast<int>(i)) != p.inner.end() ? inner : outer).push_back(6 * i + k);
  const MatrixXd inside = K(inner, inner);
  const VectorXd pull = -K(inner, outer) * u(outer);
  const VectorXd got = solve_dense(inside, pull);
  return (got - u(inner)).norm() / u.norm();
}

void check_patch(const ElementEntry& e, Conformance& out) {
  const Patch p = patch_of(e.dimension);
  const MatrixXd K = patch_stiffness(e, p);
  double error = 0, energy = 0;
  int worst = -1, dearest = -1;
  for (int which = 0; which < states(e.dimension); ++which) {
    const VectorXd u = state_of(e, which, p.nodes);
    if (const double found = patch_error(K, p, u); !(found <= error)) {
      error = found;
      worst = which;
    }
    const double due = energy_density(e, which) * p.size;
    if (std::isnan(due)) continue; // a parameter that it does not declare
    if (const double found = std::abs(u.dot(K * u) / 2 / due - 1); !(found <= energy)) {
      energy = found;
      dearest = which;
    }
  }
  static const std::vector<std::string> line{"stretch", "curvature about y", "curvature about z", "twist"};
  static const std::vector<std::string> surface{"strain xx",    "strain yy",    "strain xy",
                                                "curvature xx", "curvature yy", "curvature xy"};
  const auto name = [&](int which) {
    return which < 0 ? std::string() : "worst: " + (e.dimension == 1 ? line : surface)[static_cast<std::size_t>(which)];
  };
  out.at_most("patch test: inner displacements of constant states", error, 1e-10, name(worst));
  out.at_most("energy of constant states against theory", energy, 1e-9, name(dearest));
}

} // namespace

Conformance check_element(const ElementEntry& e) {
  Conformance out;
  if (!declared_extents(e, out)) return out;
  check_matrix(e, out);
  check_turning(e, out);
  check_patch(e, out);
  if (e.mass) check_mass(e, out);
  if (e.geometric) check_geometric(e, out);
  if (e.load) check_loads(e, out);
  return out;
}

} // namespace bedbow
