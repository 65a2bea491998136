#include "mesh/piece/shape/thin_wall.h"

#include <array>
#include <cmath>

namespace bedbow {

namespace {

using Eigen::Vector2d;

// Three-point Gauss on 0..1: exact for the square of a quadratic flow.
constexpr std::array<double, 3> gauss_s{0.5 - 0.387298334620741689, 0.5, 0.5 + 0.387298334620741689};
constexpr std::array<double, 3> gauss_w{5.0 / 18, 8.0 / 18, 5.0 / 18};

void add_area(ThinWall& w) {
  const auto& p = w.path.nodes;
  Vector2d first = Vector2d::Zero();
  for (std::size_t i = 0; i + 1 < p.size(); ++i) {
    const double area = (p[i + 1] - p[i]).norm() * w.path.thickness;
    w.A += area;
    first += area * (p[i] + p[i + 1]) / 2;
  }
  w.centroid = first / w.A;
  for (std::size_t i = 0; i + 1 < p.size(); ++i) {
    const Vector2d d = p[i + 1] - p[i], m = (p[i] + p[i + 1]) / 2 - w.centroid;
    const double area = d.norm() * w.path.thickness;
    w.Izz += area * (m.x() * m.x() + d.x() * d.x() / 12);
    w.Iyy += area * (m.y() * m.y() + d.y() * d.y() / 12);
    w.Iyz += area * (m.x() * m.y() + d.x() * d.y() / 12);
    w.J += d.norm() * std::pow(w.path.thickness, 3) / 3;
  }
}

// Flow gathered over a piece from its start to s: q = -integral (dsigma/dx) t ds, where unsymmetric bending gives
// dsigma/dx = [(Vz Izz - Vy Iyz) z + (Vy Iyy - Vz Iyz) y] / (Iyy Izz - Iyz^2).
Vector2d gathered(const ThinWall& w, std::size_t piece, double s) {
  const auto& p = w.path.nodes;
  const Vector2d d = p[piece + 1] - p[piece];
  const Vector2d moment = w.path.thickness * d.norm() * s * (p[piece] - w.centroid + d * s / 2);
  const double det = w.Iyy * w.Izz - w.Iyz * w.Iyz;
  return -Vector2d(w.Iyy * moment.x() - w.Iyz * moment.y(), w.Izz * moment.y() - w.Iyz * moment.x()) / det;
}

} // namespace

Vector2d shear_flow(const ThinWall& wall, std::size_t piece, double s) {
  return wall.flow_at[piece] + gathered(wall, piece, s);
}

ThinWall thin_wall(WallPath path) {
  ThinWall w;
  w.path = std::move(path);
  add_area(w);
  const auto& p = w.path.nodes;
  w.flow_at.assign(p.size(), Vector2d::Zero());
  for (std::size_t i = 0; i + 1 < p.size(); ++i) w.flow_at[i + 1] = shear_flow(w, i, 1);

  Vector2d torque = Vector2d::Zero(), flexibility = Vector2d::Zero();
  for (std::size_t i = 0; i + 1 < p.size(); ++i) {
    const Vector2d d = p[i + 1] - p[i], arm = p[i] - w.centroid;
    const double turning = arm.x() * d.y() - arm.y() * d.x(); // moment about the centroid of unit flow on this piece
    for (std::size_t g = 0; g < gauss_s.size(); ++g) {
      const Vector2d q = shear_flow(w, i, gauss_s[g]);
      torque += gauss_w[g] * turning * q;
      flexibility += gauss_w[g] * d.norm() / w.path.thickness * q.cwiseAbs2();
    }
  }
  w.shear_centre = w.centroid + Vector2d(torque.y(), -torque.x());
  w.Ay = 1 / flexibility.x();
  w.Az = 1 / flexibility.y();
  return w;
}

} // namespace bedbow
