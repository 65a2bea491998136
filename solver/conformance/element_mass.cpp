// Mass and loads of an element against those of the body that it represents.
#include "solver/conformance/element_terms.h"
#include "solver/conformance/states.h"
#include "solver/linear/dense.h"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow::conformance {

namespace {

using Eigen::Index;
using Eigen::Matrix3d;
using Eigen::Matrix3Xd;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;

/// The body as geometry alone: per mass or per load of one.
struct Extent {
  double size;     ///< length or area
  Vector3d centre; ///< of it
  Matrix3d axes;   ///< rows: the directions in which the moments are
  Vector3d second; ///< second moments of the size about the centre and those axes
};

Extent line_extent(const Matrix3Xd& corners) {
  const double l = (corners.col(1) - corners.col(0)).norm();
  return {l, corners.rowwise().mean(), line_axes(corners), {0, l * l * l / 12, l * l * l / 12}};
}

/// Of a flat quadrilateral, by its two triangles: the second moment of a triangle is area / 12 times the sum over its
/// corners and three times its centroid (exact for quadratics).
Extent surface_extent(const Matrix3Xd& c) {
  Extent out{0, Vector3d::Zero(), Matrix3d::Zero(), Vector3d::Zero()};
  const Vector3d x = (c.col(1) - c.col(0)).normalized();
  const Vector3d z = x.cross(Vector3d(c.col(3) - c.col(0))).normalized();
  out.axes << x.transpose(), z.cross(x).transpose(), z.transpose();
  struct Triangle {
    double area;
    Matrix3d corners;
  };
  std::vector<Triangle> parts;
  for (const auto& [i, j] : {std::pair{1, 2}, std::pair{2, 3}}) {
    Triangle t;
    t.corners << c.col(0), c.col(i), c.col(j);
    t.area = (t.corners.col(1) - t.corners.col(0)).cross(Vector3d(t.corners.col(2) - t.corners.col(0))).norm() / 2;
    out.size += t.area;
    out.centre += t.area * t.corners.rowwise().mean();
    parts.push_back(t);
  }
  out.centre /= out.size;
  Vector3d squares = Vector3d::Zero();
  for (const Triangle& t : parts) {
    const Matrix3d local = out.axes * (t.corners.colwise() - out.centre);
    const Vector3d middle = local.rowwise().mean();
    squares += t.area / 12 * (local.cwiseProduct(local).rowwise().sum() + 9 * middle.cwiseProduct(middle));
  }
  out.second = Vector3d::Constant(squares.sum()) - squares;
  return out;
}

Extent extent_of(const ElementEntry& e, const Matrix3Xd& corners) {
  return e.dimension == 1 ? line_extent(corners) : surface_extent(corners);
}

/// Modes: three translations along the body's axes, three rotations about its centre.
MatrixXd rigid_about(const Extent& body, const Matrix3Xd& corners) {
  MatrixXd out(6 * corners.cols(), 6);
  const Matrix3Xd from_centre = corners.colwise() - body.centre;
  for (Index k = 0; k < 3; ++k) {
    out.col(k).setZero();
    out.col(3 + k).setZero();
    for (int j = 0; j < 3; ++j) {
      out.col(k) += body.axes(k, j) * rigid(from_centre, j);
      out.col(3 + k) += body.axes(k, j) * rigid(from_centre, 3 + j);
    }
  }
  return out;
}

/// Mass per length or area, and the greatest rotary inertia of it about the axes.
struct Inertia {
  double mass;
  Vector3d rotary;
};

Inertia inertia_of(const ElementEntry& e) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double density = example_of(e, "density", nan);
  if (e.dimension == 1) {
    const double y = example_of(e, "Iyy", 0), z = example_of(e, "Izz", 0);
    return {density * example_of(e, "A", nan), density * Vector3d(y + z, y, z)};
  }
  const double t = example_of(e, "thickness", nan);
  return {density * t, Vector3d::Constant(density * t * t * t / 12)};
}

/// Worst values of all examples, lumped and consistent.
struct MassErrors {
  double skew = 0, negative = 0, total = 0, centre = 0, turns = 0;

  void look(const ElementEntry& e, const Matrix3Xd& corners, bool lumped) {
    const Extent body = extent_of(e, corners);
    const Inertia due = inertia_of(e);
    const MatrixXd M = e.mass(input_of(e, corners), lumped);
    const double size = M.cwiseAbs().maxCoeff();
    skew = worse(skew, (M - M.transpose()).cwiseAbs().maxCoeff() / size);
    const VectorXd v = symmetric_eigenvalues((M + M.transpose()) / 2);
    negative = worse(negative, -v[0] / v.cwiseAbs().maxCoeff());
    const MatrixXd r = rigid_about(body, corners);
    const MatrixXd whole = r.transpose() * M * r;
    const double mass = due.mass * body.size, arm = std::sqrt(body.second.maxCoeff() / body.size);
    total = worse(total, (whole.topLeftCorner<3, 3>() / mass - Matrix3d::Identity()).cwiseAbs().maxCoeff());
    centre = worse(centre, whole.topRightCorner<3, 3>().cwiseAbs().maxCoeff() / (mass * arm));
    const Vector3d least = due.mass * body.second;
    const Vector3d most = (lumped ? 4 : 1) * (least + due.rotary * body.size);
    for (int k = 0; k < 3; ++k) {
      const double found = whole(3 + k, 3 + k);
      turns = worse(turns, std::max(least[k] - found, found - most[k]) / most.maxCoeff());
    }
  }
  /// The greater value; NaN is kept.
  static double worse(double a, double b) { return b <= a ? a : b; }
};

} // namespace

void check_mass(const ElementEntry& e, Conformance& out) {
  MassErrors worst;
  for (const Matrix3Xd& corners : e.examples)
    for (const bool lumped : {false, true}) worst.look(e, corners, lumped);
  out.at_most("mass symmetric: |M - M'| / |M|", worst.skew, 1e-12);
  out.at_most("no negative mass: -least / greatest eigenvalue", worst.negative, 1e-12);
  out.at_most("total mass against density and section, all axes", worst.total, 1e-9);
  out.at_most("mass centre in the body's", worst.centre, 1e-9);
  out.at_most("inertia of a rigid body: beyond its bounds", worst.turns, 1e-9);
}

void check_loads(const ElementEntry& e, Conformance& out) {
  double error = 0;
  for (const Matrix3Xd& corners : e.examples) {
    const Extent body = extent_of(e, corners);
    const MatrixXd r = rigid_about(body, corners);
    const double arm = std::sqrt(body.second.maxCoeff() / body.size);
    for (int k = 0; k < load_size(e.dimension); ++k) {
      VectorXd load = VectorXd::Zero(load_size(e.dimension));
      load[k] = 1;
      const VectorXd work =
          r.transpose() * e.load(input_of(e, corners), {load.data(), static_cast<std::size_t>(load.size())});
      VectorXd due = VectorXd::Zero(6); // a uniform load acts at the centre
      due.segment<3>(k < 3 ? 0 : 3) = body.size * body.axes.col(k % 3);
      VectorXd scale = VectorXd::Constant(6, body.size);
      if (k < 3) scale.tail<3>() *= arm;
      error = MassErrors::worse(error, (work - due).cwiseQuotient(scale).cwiseAbs().maxCoeff());
    }
  }
  out.at_most("loads in equilibrium with the uniform load", error, 1e-10);
}

} // namespace bedbow::conformance
