// Reference numbers by other means than finite elements: Saint-Venant's series of the rectangle in torsion;
// frequencies, buckling and deflection of thin plates, and deflection of shear-flexible ones, by Ritz's method with
// Legendre polynomials. Every figure is printed for growing numbers of terms, so that its standing digits show.
#include <Eigen/Dense>

#include <cmath>
#include <cstdio>
#include <numbers>
#include <string>
#include <vector>

namespace {

using Real = long double;
using Matrix = Eigen::Matrix<Real, Eigen::Dynamic, Eigen::Dynamic>;
using Vector = Eigen::Matrix<Real, Eigen::Dynamic, 1>;

constexpr Real pi = std::numbers::pi_v<Real>;

/// Places and weights of Gauss on [-1, 1].
struct Gauss {
  Vector x, w;
  explicit Gauss(int n)
      : x(n)
      , w(n) {
    for (int i = 0; i < n; ++i) {
      Real z = std::cos(pi * (i + 0.75L) / (n + 0.5L)), slope = 1;
      for (int step = 0; step < 20; ++step) {
        Real p = 1, before = 0;
        for (int j = 0; j < n; ++j) {
          const Real next = ((2 * j + 1) * z * p - j * before) / (j + 1);
          before = p, p = next;
        }
        slope = n * (z * p - before) / (z * z - 1);
        z -= p / slope;
      }
      x(i) = z, w(i) = 2 / ((1 - z * z) * slope * slope);
    }
  }
};

/// Functions (1 + z)^p (1 - z)^q P_n(z) and two derivatives: one row a function, one column a place.
struct Basis {
  Matrix f, d, dd;
  Basis(const std::vector<int>& degrees, int p, int q, const Vector& places)
      : f(degrees.size(), places.size())
      , d(f)
      , dd(f) {
    const auto power = [](Real b, int e) { return e < 0 ? Real(0) : std::pow(b, Real(e)); };
    for (int k = 0; k < places.size(); ++k) {
      const Real z = places(k);
      std::vector<Real> P{1, z}, D{0, 1}, E{0, 0};
      for (int j = 1; j <= degrees.back(); ++j) {
        P.push_back(((2 * j + 1) * z * P[j] - j * P[j - 1]) / (j + 1));
        D.push_back(D[j - 1] + (2 * j + 1) * P[j]);
        E.push_back(E[j - 1] + (2 * j + 1) * D[j]);
      }
      const Real a = power(1 + z, p), a1 = p * power(1 + z, p - 1), a2 = p * (p - 1) * power(1 + z, p - 2);
      const Real b = power(1 - z, q), b1 = -q * power(1 - z, q - 1), b2 = q * (q - 1) * power(1 - z, q - 2);
      const Real g = a * b, g1 = a1 * b + a * b1, g2 = a2 * b + 2 * a1 * b1 + a * b2;
      for (std::size_t i = 0; i < degrees.size(); ++i) {
        const int n = degrees[i];
        f(i, k) = g * P[n];
        d(i, k) = g1 * P[n] + g * D[n];
        dd(i, k) = g2 * P[n] + 2 * g1 * D[n] + g * E[n];
      }
    }
  }
};

std::vector<int> degrees(int n, int first = 0, int step = 1) {
  std::vector<int> out;
  for (int i = 0; i < n; ++i) out.push_back(first + i * step);
  return out;
}

Matrix product(const Matrix& x, const Matrix& y) {
  Matrix out(x.rows() * y.rows(), x.cols() * y.cols());
  for (int i = 0; i < x.rows(); ++i)
    for (int j = 0; j < x.cols(); ++j) out.block(i * y.rows(), j * y.cols(), y.rows(), y.cols()) = x(i, j) * y;
  return out;
}

/// Both with a diagonal of ones in the second.
void scale(Matrix& a, Matrix& b) {
  const Vector s = b.diagonal().cwiseAbs().cwiseSqrt().cwiseInverse();
  a = s.asDiagonal() * a * s.asDiagonal();
  b = s.asDiagonal() * b * s.asDiagonal();
}

/// Thin plate on [0, 1] x [0, b] with D = 1. Edges x = 0, x = 1, y = 0, y = b: 'f'ree, 's'imply supported, 'c'lamped.
struct Thin {
  Matrix bending, mass, pressed, sheared; ///< pressed along x, sheared: second-order work of unit n_x, n_xy
  Vector load, middle;
  Thin(const std::string& edges, Real b, Real nu, int n) {
    const Gauss g(n + 6);
    const auto order = [](char edge) { return edge == 'f' ? 0 : edge == 's' ? 1 : 2; };
    const auto along = [&](char lower, char upper, const Vector& at) {
      return Basis(degrees(n), order(lower), order(upper), at);
    };
    const Basis X = along(edges[0], edges[1], g.x), Y = along(edges[2], edges[3], g.x);
    const auto over = [&](const Matrix& p, const Matrix& q, Real scaled) {
      return Matrix(scaled * p * g.w.asDiagonal() * q.transpose());
    };
    const Real h = 0.5L, k = b / 2; // half lengths
    const Matrix x00 = over(X.f, X.f, h), x01 = over(X.f, X.d, 1), x11 = over(X.d, X.d, 1 / h),
                 x02 = over(X.f, X.dd, 1 / h), x22 = over(X.dd, X.dd, 1 / (h * h * h));
    const Matrix y00 = over(Y.f, Y.f, k), y01 = over(Y.f, Y.d, 1), y11 = over(Y.d, Y.d, 1 / k),
                 y02 = over(Y.f, Y.dd, 1 / k), y22 = over(Y.dd, Y.dd, 1 / (k * k * k));
    const Matrix mixed = product(x02.transpose(), y02);
    bending =
        product(x22, y00) + product(x00, y22) + nu * (mixed + mixed.transpose()) + 2 * (1 - nu) * product(x11, y11);
    mass = product(x00, y00);
    pressed = product(x11, y00);
    const Matrix twisted = product(x01.transpose(), y01);
    sheared = twisted + twisted.transpose();
    load = product(X.f * g.w * h, Y.f * g.w * k);
    const Vector zero = Vector::Zero(1);
    middle = product(along(edges[0], edges[1], zero).f, along(edges[2], edges[3], zero).f);
  }
};

void frequencies(const std::string& edges, int rigid, int count) {
  for (const int n : {12, 16, 20}) {
    Thin p(edges, 1, 0.3L, n);
    scale(p.bending, p.mass);
    const Eigen::GeneralizedSelfAdjointEigenSolver<Matrix> e(p.bending, p.mass, Eigen::EigenvaluesOnly);
    std::printf("omega a^2 sqrt(rho t / D), %s, %2d terms:", edges.c_str(), n);
    for (int i = rigid; i < rigid + count; ++i) std::printf(" %.5Lf", std::sqrt(e.eigenvalues()(i)));
    std::printf("\n");
  }
}

/// k of k pi^2 D / (b^2 t), length over width a/b.
void buckling(const std::string& edges, Real ratio, Real nu, bool shear) {
  std::printf("buckling k, %s, a/b = %.3Lf, nu = %.2Lf, %s:", edges.c_str(), ratio, nu, shear ? "sheared" : "pressed");
  for (const int n : {12, 16, 20}) {
    Thin p(edges, 1 / ratio, nu, n);
    Matrix& work = shear ? p.sheared : p.pressed;
    scale(work, p.bending);
    const Eigen::GeneralizedSelfAdjointEigenSolver<Matrix> e(work, p.bending, Eigen::EigenvaluesOnly);
    std::printf(" %.6Lf", 1 / (e.eigenvalues().maxCoeff() * ratio * ratio * pi * pi));
  }
  std::printf("\n");
}

void thin_deflection(const std::string& edges, Real b) {
  std::printf("w middle / (q a^4 / D), thin, %s, b/a = %.1Lf:", edges.c_str(), b);
  for (const int n : {12, 16, 20}) {
    const Thin p(edges, b, 0.3L, n);
    std::printf(" %.8Lf", Vector(p.bending.ldlt().solve(p.load)).dot(p.middle));
  }
  std::printf("\n");
}

/// Square plate of Mindlin, kappa = 5/6, a = D = q = 1, from the functions that are even about both middle lines.
Real shear_flexible(bool clamped, Real t, int n) {
  constexpr Real nu = 0.3L, h = 0.5L;
  const Gauss g(2 * n + 4);
  const int held = clamped ? 1 : 0;
  const Basis w(degrees(n, 0, 2), 1, 1, g.x), odd(degrees(n, 1, 2), held, held, g.x),
      even(degrees(n, 0, 2), held, held, g.x);
  const Real stiffness = 5 / 6.0L * (1 - nu) / 2 * 12 / (t * t), twist = (1 - nu) / 2;
  const int m = n * n;
  Matrix K = Matrix::Zero(3 * m, 3 * m);
  // Adds f times the integral of one product of functions (x and y of the row's, x and y of the column's).
  const auto add = [&](int row, int column, const Matrix& rx, const Matrix& ry, const Matrix& cx, const Matrix& cy,
                       Real f) {
    K.block(row * m, column * m, m, m) +=
        f * product(rx * g.w.asDiagonal() * cx.transpose(), ry * g.w.asDiagonal() * cy.transpose());
  };
  const auto both = [&](int row, int column, const Matrix& rx, const Matrix& ry, const Matrix& cx, const Matrix& cy,
                        Real f) {
    add(row, column, rx, ry, cx, cy, f);
    if (row != column) add(column, row, cx, cy, rx, ry, f);
  };
  // w(even, even), a = slope along x (odd, even), b = slope along y (even, odd); d/dx = d/(h dz), dA = h^2.
  both(1, 1, odd.d, even.f, odd.d, even.f, 1);
  both(2, 2, even.f, odd.d, even.f, odd.d, 1);
  both(1, 2, odd.d, even.f, even.f, odd.d, nu);
  both(1, 1, odd.f, even.d, odd.f, even.d, twist);
  both(2, 2, even.d, odd.f, even.d, odd.f, twist);
  both(1, 2, odd.f, even.d, even.d, odd.f, twist);
  both(0, 0, w.d, w.f, w.d, w.f, stiffness);
  both(0, 0, w.f, w.d, w.f, w.d, stiffness);
  both(1, 1, odd.f, even.f, odd.f, even.f, stiffness * h * h);
  both(2, 2, even.f, odd.f, even.f, odd.f, stiffness * h * h);
  both(0, 1, w.d, w.f, odd.f, even.f, -stiffness * h);
  both(0, 2, w.f, w.d, even.f, odd.f, -stiffness * h);
  Vector load = Vector::Zero(3 * m), middle = load;
  load.head(m) = product(w.f * g.w * h, w.f * g.w * h);
  const Matrix at_zero = Basis(degrees(n, 0, 2), 1, 1, Vector::Zero(1)).f;
  middle.head(m) = product(at_zero, at_zero);
  const Vector s = K.diagonal().cwiseSqrt().cwiseInverse();
  const Matrix scaled = s.asDiagonal() * K * s.asDiagonal();
  return (s.asDiagonal() * Vector(scaled.ldlt().solve(s.asDiagonal() * load))).dot(middle);
}

void shear_flexible_deflection(bool clamped, Real t) {
  std::printf("w middle / (q a^4 / D), %s, t/a = %.2Lf:", clamped ? "clamped" : "soft support", t);
  for (const int n : {6, 9, 12, 14}) std::printf(" %.8Lf", shear_flexible(clamped, t, n));
  std::printf("\n");
}

/// J = beta b t^3, tau = T / (alpha b t^2), r = b/t.
void torsion(Real r) {
  std::printf("torsion, b/t = %.1Lf, 10, 100 and 1000 terms:", r);
  for (const int terms : {10, 100, 1000}) {
    Real twist = 0, stress = 0;
    for (int n = 2 * terms - 1; n > 0; n -= 2) {
      twist += std::tanh(n * pi * r / 2) / std::pow(Real(n), Real(5));
      stress += 1 / (Real(n) * n * std::cosh(n * pi * r / 2));
    }
    const Real beta = 1 / 3.0L - 64 / std::pow(pi, Real(5)) / r * twist;
    std::printf(" beta %.7Lf alpha %.7Lf", beta, beta / (1 - 8 / (pi * pi) * stress));
  }
  std::printf("\n");
}

} // namespace

int main() {
  for (const Real r : {1.0L, 1.2L, 1.5L, 2.0L, 2.5L, 3.0L, 4.0L, 5.0L, 10.0L}) torsion(r);
  frequencies("ssss", 0, 4);
  frequencies("cccc", 0, 4);
  frequencies("cfff", 0, 6);
  frequencies("ffff", 3, 8);
  buckling("ssss", 1, 0.3L, false);
  buckling("ssss", 2, 0.3L, false);
  buckling("sscc", 1.983L, 0.3L, false);
  buckling("sscs", 1.6L, 0.3L, false);
  buckling("sssf", 1, 0.3L, false);
  buckling("sssf", 5, 0.3L, false);
  buckling("sscf", 1.65L, 0.3L, false);
  buckling("sscf", 1.65L, 0.25L, false);
  for (const Real ratio : {1.0L, 2.0L, 5.0L}) buckling("ssss", ratio, 0.3L, true);
  for (const Real b : {1.5L, 2.0L, 5.0L}) thin_deflection("cccc", b);
  thin_deflection("ssff", 1);
  for (const Real t : {0.05L, 0.1L, 0.2L}) shear_flexible_deflection(false, t);
  for (const Real t : {0.01L, 0.05L, 0.1L, 0.2L}) shear_flexible_deflection(true, t);
}
