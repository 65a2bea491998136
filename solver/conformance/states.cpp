#include "solver/conformance/states.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow::conformance {

using Eigen::Index;
using Eigen::Matrix3Xd;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;

ElementInput input_of(const ElementEntry& e, const Matrix3Xd& corners) {
  ElementInput in{corners, {}};
  for (const ElementParameter& p : e.parameters) in.parameters.push_back(p.example);
  return in;
}

double example_of(const ElementEntry& e, const std::string& parameter, double otherwise) {
  const auto it = std::ranges::find(e.parameters, parameter, &ElementParameter::name);
  return it == e.parameters.end() ? otherwise : it->example;
}

VectorXd rigid(const Matrix3Xd& corners, int k) {
  VectorXd u = VectorXd::Zero(6 * corners.cols());
  const Vector3d d = Vector3d::Unit(k % 3);
  for (Index i = 0; i < corners.cols(); ++i) {
    if (k < 3)
      u.segment<3>(6 * i) = d;
    else
      u.segment<6>(6 * i) << d.cross(Vector3d(corners.col(i))), d;
  }
  return u;
}

int states(int dimension) {
  return dimension == 1 ? 4 : 6;
}

Vector6 constant_state(int dimension, int which, const Vector3d& p) {
  const double x = p.x(), y = p.y();
  Vector6 m = Vector6::Zero();
  switch (dimension == 1 ? which : 10 + which) {
  case 0: // stretch
  case 10:
    m << x, 0, 0, 0, 0, 0;
    break;
  case 1: // curvature about y
  case 13:
    m << 0, 0, -x * x / 2, 0, x, 0;
    break;
  case 2: // curvature about z
    m << 0, x * x / 2, 0, 0, 0, x;
    break;
  case 3: // twist
    m << 0, 0, 0, x, 0, 0;
    break;
  case 11:
    m << 0, y, 0, 0, 0, 0;
    break;
  case 12:
    m << y / 2, x / 2, 0, 0, 0, 0;
    break;
  case 14:
    m << 0, 0, -y * y / 2, -y, 0, 0;
    break;
  default:
    m << 0, 0, -x * y / 2, -x / 2, y / 2, 0;
  }
  return m;
}

double energy_density(const ElementEntry& e, int which) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto of = [&](const char* name) { return example_of(e, name, nan); };
  if (e.dimension == 1) {
    switch (which) {
    case 0:
      return of("E") * of("A") / 2;
    case 1:
      return of("E") * of("Iyy") / 2;
    case 2:
      return of("E") * of("Izz") / 2;
    default:
      return of("G") * of("J") / 2;
    }
  }
  const double E = of("E"), nu = of("nu"), t = of("thickness");
  const double D = E * t * t * t / (12 * (1 - nu * nu));
  switch (which) {
  case 0:
  case 1:
    return E * t / (1 - nu * nu) / 2;
  case 2:
    return E / (2 * (1 + nu)) * t / 2;
  case 5:
    return D * (1 - nu) / 4; // w,xy = -1/2
  default:
    return D / 2;
  }
}

Patch patch_of(int dimension) {
  Patch p;
  if (dimension == 1) {
    p.nodes = Matrix3Xd::Zero(3, 3);
    p.nodes.row(0) << 0, 0.13, 0.3;
    p.elements = {{0, 1}, {1, 2}};
    p.inner = {1};
    p.size = 0.3;
    return p;
  }
  p.nodes = Matrix3Xd::Zero(3, 8);
  p.nodes.row(0) << 0, .24, .24, 0, .04, .18, .16, .08;
  p.nodes.row(1) << 0, 0, .12, .12, .02, .03, .08, .08;
  p.elements = {{0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}, {4, 5, 6, 7}};
  p.inner = {4, 5, 6, 7};
  p.size = 0.24 * 0.12;
  return p;
}

MatrixXd patch_sum(const Patch& p, const std::function<MatrixXd(const Matrix3Xd&)>& matrix) {
  MatrixXd K = MatrixXd::Zero(6 * p.nodes.cols(), 6 * p.nodes.cols());
  for (const auto& nodes : p.elements) {
    const auto n = static_cast<Index>(nodes.size());
    Matrix3Xd corners(3, n);
    for (Index i = 0; i < n; ++i) corners.col(i) = p.nodes.col(nodes[static_cast<std::size_t>(i)]);
    const MatrixXd k = matrix(corners);
    for (Index i = 0; i < n; ++i)
      for (Index j = 0; j < n; ++j)
        K.block<6, 6>(6 * nodes[static_cast<std::size_t>(i)], 6 * nodes[static_cast<std::size_t>(j)]) +=
            k.block<6, 6>(6 * i, 6 * j);
  }
  return K;
}

MatrixXd patch_stiffness(const ElementEntry& e, const Patch& p) {
  return patch_sum(p, [&](const Matrix3Xd& corners) { return e.stiffness(input_of(e, corners)); });
}

} // namespace bedbow::conformance
