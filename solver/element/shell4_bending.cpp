#include "solver/element/shell4_bending.h"

namespace bedbow::shell {

namespace {

constexpr int bending_dof[12] = {2, 3, 4, 8, 9, 10, 14, 15, 16, 20, 21, 22}; // w rx ry among the element's 24

/// Covariant shear strain along an edge at its middle, per (w rx ry) of its two ends:
/// dw/ds + (ry x_s - rx y_s), with s from -1 to 1.
struct Tying {
  int from, to;
  double along_x, along_y; ///< half the edge's vector
};

/// Edges along xi (lower, upper), then along eta (left, right), each in the direction of its coordinate.
std::array<Tying, 4> tyings(const Quad& q) {
  constexpr int ends[4][2] = {{0, 1}, {3, 2}, {0, 3}, {1, 2}};
  std::array<Tying, 4> t{};
  for (std::size_t e = 0; e < 4; ++e) {
    const int a = ends[e][0];
    const int b = ends[e][1];
    t[e] = {a, b, (q.x[b] - q.x[a]) / 2, (q.y[b] - q.y[a]) / 2};
  }
  return t;
}

void add_tying(const Tying& t, double share, double (&row)[12]) {
  row[3 * t.from] -= share / 2;
  row[3 * t.to] += share / 2;
  for (int node : {t.from, t.to}) {
    row[3 * node + 1] -= share * t.along_y / 2;
    row[3 * node + 2] += share * t.along_x / 2;
  }
}

/// Curvatures (xx yy xy) and shear strains (xz yz) at a point, per (w rx ry) of the nodes.
struct Strains {
  double b[5][12] = {};
  double det = 0;
};

Strains strains_at(const Quad& q, const std::array<Tying, 4>& t, double xi, double eta) {
  Strains s;
  const Shape4 shape = shape4(q, xi, eta);
  s.det = shape.det;
  for (int i = 0; i < 4; ++i) { // a fibre at z moves by (z ry, -z rx)
    s.b[0][3 * i + 2] = shape.dx[i];
    s.b[1][3 * i + 1] = -shape.dy[i];
    s.b[2][3 * i + 2] = shape.dy[i];
    s.b[2][3 * i + 1] = -shape.dx[i];
  }
  double along_xi[12] = {}, along_eta[12] = {};
  add_tying(t[0], (1 - eta) / 2, along_xi);
  add_tying(t[1], (1 + eta) / 2, along_xi);
  add_tying(t[2], (1 - xi) / 2, along_eta);
  add_tying(t[3], (1 + xi) / 2, along_eta);
  // Jacobian at the point, from the same edges.
  const double xx = (1 - eta) / 2 * t[0].along_x + (1 + eta) / 2 * t[1].along_x;
  const double yx = (1 - eta) / 2 * t[0].along_y + (1 + eta) / 2 * t[1].along_y;
  const double xe = (1 - xi) / 2 * t[2].along_x + (1 + xi) / 2 * t[3].along_x;
  const double ye = (1 - xi) / 2 * t[2].along_y + (1 + xi) / 2 * t[3].along_y;
  for (int j = 0; j < 12; ++j) {
    s.b[3][j] = (ye * along_xi[j] - yx * along_eta[j]) / s.det;
    s.b[4][j] = (xx * along_eta[j] - xe * along_xi[j]) / s.det;
  }
  return s;
}

struct Law {
  double bending, shear, nu;
  explicit Law(const ShellData& d)
      : bending(d.E * d.thickness * d.thickness * d.thickness / (12 * (1 - d.nu * d.nu)))
      , shear(shear_correction * d.E / (2 * (1 + d.nu)) * d.thickness)
      , nu(d.nu) {}
  /// Resultants of strains (kxx kyy kxy gxz gyz).
  void apply(const double (&e)[5], double (&r)[5]) const {
    r[0] = bending * (e[0] + nu * e[1]);
    r[1] = bending * (e[1] + nu * e[0]);
    r[2] = bending * (1 - nu) / 2 * e[2];
    r[3] = shear * e[3];
    r[4] = shear * e[4];
  }
};

} // namespace

void add_bending_stiffness(const Quad& q, const ShellData& data, Matrix24d& k) {
  const Law law(data);
  const auto t = tyings(q);
  double sum[12][12] = {};
  for (std::size_t p = 0; p < 4; ++p) {
    const Strains s = strains_at(q, t, gauss2 * corner_xi[p], gauss2 * corner_eta[p]);
    for (int j = 0; j < 12; ++j) {
      double column[5], r[5];
      for (int c = 0; c < 5; ++c) column[c] = s.b[c][j] * s.det;
      law.apply(column, r);
      for (int i = j; i < 12; ++i)
        for (int c = 0; c < 5; ++c) sum[i][j] += s.b[c][i] * r[c];
    }
  }
  for (int j = 0; j < 12; ++j)
    for (int i = j; i < 12; ++i) {
      k(bending_dof[i], bending_dof[j]) += sum[i][j];
      if (i != j) k(bending_dof[j], bending_dof[i]) += sum[i][j];
    }
}

std::array<ShellResultants, 4> bending_resultants(const Quad& q, const ShellData& data, const Vector24d& u) {
  const Law law(data);
  const auto t = tyings(q);
  std::array<ShellResultants, 4> out;
  for (std::size_t p = 0; p < 4; ++p) {
    const Strains s = strains_at(q, t, gauss2 * corner_xi[p], gauss2 * corner_eta[p]);
    double strain[5] = {}, r[5];
    for (int c = 0; c < 5; ++c)
      for (int j = 0; j < 12; ++j) strain[c] += s.b[c][j] * u[bending_dof[j]];
    law.apply(strain, r);
    out[p].n.setZero();
    out[p].m = {r[0], r[1], r[2]};
    out[p].q = {r[3], r[4]};
  }
  return out;
}

} // namespace bedbow::shell
