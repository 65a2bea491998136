#include "mesh/machine/user_mesh.h"

#include <Eigen/LU>

#include <algorithm>

namespace bedbow {

std::vector<bool> UserMesh::used() const {
  std::vector<bool> out(points.size());
  for (const OwnLine& l : lines)
    for (int p : l.points) out[static_cast<std::size_t>(p)] = true;
  for (const OwnQuad& q : quads)
    for (int p : q.points) out[static_cast<std::size_t>(p)] = true;
  return out;
}

UserMeshNearest nearest_on_line(const std::array<Eigen::Vector3d, 2>& ends, const Eigen::Vector3d& at) {
  const Eigen::Vector3d d = ends[1] - ends[0];
  const double t = std::clamp((at - ends[0]).dot(d) / d.squaredNorm(), 0.0, 1.0);
  return {{0, 1}, {1 - t, t}, (at - ends[0] - t * d).norm()};
}

UserMeshNearest nearest_on_quad(const std::array<Eigen::Vector3d, 4>& c, const Eigen::Vector3d& at) {
  constexpr int enough = 20; // Gauss-Newton on a flat convex quad settles in a few steps
  double xi = 0, eta = 0;
  const auto weights = [&] {
    return std::vector<double>{(1 - xi) * (1 - eta) / 4, (1 + xi) * (1 - eta) / 4, (1 + xi) * (1 + eta) / 4,
                               (1 - xi) * (1 + eta) / 4};
  };
  const auto spot = [&] {
    const auto n = weights();
    return Eigen::Vector3d(n[0] * c[0] + n[1] * c[1] + n[2] * c[2] + n[3] * c[3]);
  };
  for (int i = 0; i < enough; ++i) {
    Eigen::Matrix<double, 3, 2> slope;
    slope.col(0) = ((1 - eta) * (c[1] - c[0]) + (1 + eta) * (c[2] - c[3])) / 4;
    slope.col(1) = ((1 - xi) * (c[3] - c[0]) + (1 + xi) * (c[2] - c[1])) / 4;
    const Eigen::Matrix2d normal = slope.transpose() * slope;
    const Eigen::Vector2d step = normal.inverse() * (slope.transpose() * (at - spot()));
    const double before_xi = xi, before_eta = eta;
    xi = std::clamp(xi + step.x(), -1.0, 1.0);
    eta = std::clamp(eta + step.y(), -1.0, 1.0);
    if (std::abs(xi - before_xi) + std::abs(eta - before_eta) < 1e-14) break;
  }
  return {{0, 1, 2, 3}, weights(), (at - spot()).norm()};
}

namespace {

template <std::size_t n>
void keep_nearer(const std::array<int, n>& points, UserMeshNearest found, UserMeshNearest& best) {
  if (found.distance >= best.distance) return;
  best = std::move(found);
  for (int& p : best.points) p = points[static_cast<std::size_t>(p)];
}

} // namespace

UserMeshNearest nearest_on_part(const UserMesh& mesh, int part, const Eigen::Vector3d& at) {
  UserMeshNearest best;
  const auto x = [&](int p) { return mesh.points[static_cast<std::size_t>(p)]; };
  for (const OwnLine& l : mesh.lines)
    if (l.part == part) keep_nearer(l.points, nearest_on_line({x(l.points[0]), x(l.points[1])}, at), best);
  for (const OwnQuad& q : mesh.quads)
    if (q.part == part)
      keep_nearer(q.points, nearest_on_quad({x(q.points[0]), x(q.points[1]), x(q.points[2]), x(q.points[3])}, at),
                  best);
  return best;
}

UserMeshFace nearest_face(const UserMesh& mesh, int part, const Eigen::Vector3d& at) {
  UserMeshFace out;
  double least = std::numeric_limits<double>::infinity();
  for (const OwnQuad& q : mesh.quads) {
    if (q.part != part) continue;
    std::array<Eigen::Vector3d, 4> x;
    for (std::size_t i = 0; i < 4; ++i) x[i] = mesh.points[static_cast<std::size_t>(q.points[i])];
    const UserMeshNearest near = nearest_on_quad(x, at);
    if (near.distance >= least) continue;
    least = near.distance;
    out.quad = &q;
    out.spot.setZero();
    for (std::size_t i = 0; i < near.points.size(); ++i)
      out.spot += near.weights[i] * x[static_cast<std::size_t>(near.points[i])];
    out.normal = Eigen::Vector3d(x[2] - x[0]).cross(Eigen::Vector3d(x[3] - x[1])).normalized();
  }
  return out;
}

} // namespace bedbow
