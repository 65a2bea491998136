#include "solver/element/shell4_frame.h"

#include <Eigen/Geometry>

#include <cmath>
#include <stdexcept>

namespace bedbow {

Eigen::Matrix3d shell_axes(const Corners& c) {
  const Eigen::Vector3d diagonals = (c[2] - c[0]).cross(c[3] - c[1]);
  const double twice_area = diagonals.norm();
  if (!(twice_area > 0)) throw std::invalid_argument("shell element of zero area: its corners lie on one line");
  const Eigen::Vector3d z = diagonals / twice_area;
  Eigen::Vector3d x = c[1] + c[2] - c[0] - c[3];
  x -= x.dot(z) * z;
  x.normalize();
  Eigen::Matrix3d axes;
  axes.row(0) = x;
  axes.row(1) = z.cross(x);
  axes.row(2) = z;
  return axes;
}

namespace shell {

Quad quad_of(const Corners& corners) {
  Quad q;
  q.axes = shell_axes(corners);
  const Eigen::Vector3d centre = (corners[0] + corners[1] + corners[2] + corners[3]) / 4;
  double size = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const Eigen::Vector3d p = q.axes * (corners[i] - centre);
    q.x[i] = p.x();
    q.y[i] = p.y();
    q.z[i] = p.z();
    size = std::max(size, p.norm());
  }
  for (double& z : q.z)
    if (std::abs(z) < 1e-12 * size) z = 0;
  q.area = ((q.x[2] - q.x[0]) * (q.y[3] - q.y[1]) - (q.x[3] - q.x[1]) * (q.y[2] - q.y[0])) / 2;
  for (std::size_t i = 0; i < 4; ++i)
    if (!(shape4(q, corner_xi[i], corner_eta[i]).det > 0))
      throw std::invalid_argument("shell element folds over at corner " + std::to_string(i + 1) +
                                  ": corners must run around a convex quadrilateral");
  return q;
}

Shape4 shape4(const Quad& q, double xi, double eta) {
  Shape4 s;
  std::array<double, 4> nx{}, ne{};
  double xx = 0, xe = 0, yx = 0, ye = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const double a = 1 + corner_xi[i] * xi;
    const double b = 1 + corner_eta[i] * eta;
    s.n[i] = a * b / 4;
    nx[i] = corner_xi[i] * b / 4;
    ne[i] = corner_eta[i] * a / 4;
    xx += nx[i] * q.x[i];
    xe += ne[i] * q.x[i];
    yx += nx[i] * q.y[i];
    ye += ne[i] * q.y[i];
  }
  s.det = xx * ye - xe * yx;
  for (std::size_t i = 0; i < 4; ++i) {
    s.dx[i] = (ye * nx[i] - yx * ne[i]) / s.det;
    s.dy[i] = (xx * ne[i] - xe * nx[i]) / s.det;
  }
  return s;
}

namespace {

/// Displacement of the projected corner, element's axes, per displacement of the node, global axes: 6 x 6 by rows.
struct Carry {
  double t[6][6] = {};
};

Carry carry(const Quad& q, std::size_t node) {
  Carry c;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) c.t[i][j] = c.t[3 + i][3 + j] = q.axes(i, j);
  // The corner lies -z above the node: u -= z ry, v += z rx.
  for (int j = 0; j < 3; ++j) {
    c.t[0][3 + j] = -q.z[node] * q.axes(1, j);
    c.t[1][3 + j] = q.z[node] * q.axes(0, j);
  }
  return c;
}

} // namespace

Matrix24d to_global(const Quad& q, const Matrix24d& local) {
  Carry c[4];
  for (std::size_t i = 0; i < 4; ++i) c[i] = carry(q, i);
  Matrix24d out;
  for (int p = 0; p < 4; ++p)
    for (int r = 0; r <= p; ++r) {
      double half[6][6]; // local * carry
      for (int i = 0; i < 6; ++i)
        for (int j = 0; j < 6; ++j) {
          double sum = 0;
          for (int k = 0; k < 6; ++k) sum += local(6 * p + i, 6 * r + k) * c[r].t[k][j];
          half[i][j] = sum;
        }
      for (int i = 0; i < 6; ++i)
        for (int j = 0; j < (p == r ? i + 1 : 6); ++j) {
          double sum = 0;
          for (int k = 0; k < 6; ++k) sum += c[p].t[k][i] * half[k][j];
          out(6 * p + i, 6 * r + j) = out(6 * r + j, 6 * p + i) = sum;
        }
    }
  return out;
}

Vector24d to_global(const Quad& q, const Vector24d& local) {
  Vector24d out;
  for (std::size_t p = 0; p < 4; ++p) {
    const Carry c = carry(q, p);
    for (int i = 0; i < 6; ++i) {
      double sum = 0;
      for (int k = 0; k < 6; ++k) sum += c.t[k][i] * local[6 * static_cast<int>(p) + k];
      out[6 * static_cast<int>(p) + i] = sum;
    }
  }
  return out;
}

Vector24d to_local(const Quad& q, const Vector24d& global) {
  Vector24d out;
  for (std::size_t p = 0; p < 4; ++p) {
    const Carry c = carry(q, p);
    for (int i = 0; i < 6; ++i) {
      double sum = 0;
      for (int k = 0; k < 6; ++k) sum += c.t[i][k] * global[6 * static_cast<int>(p) + k];
      out[6 * static_cast<int>(p) + i] = sum;
    }
  }
  return out;
}

} // namespace shell
} // namespace bedbow
