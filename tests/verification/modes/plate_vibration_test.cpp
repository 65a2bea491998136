// Plates that swing and buckle, as panels of a case: Leissa, NAFEMS FV12, Timoshenko & Gere.
#include "tests/verification/modes/vibration.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

using std::numbers::pi;
// Plates that Leissa and Timoshenko & Gere treat, computed anew.
const std::string ritz = "Ritz's method with 20 x 20 Legendre polynomials, tests/reference/ritz.txt";

struct Plate {
  double a = 1000, b = 1000, t = 2; ///< [mm]
  int na = 40, nb = 40;
  double E = 200, nu = 0.3, rho = 8000; ///< [GPa, -, kg/m^3]
  [[nodiscard]] double D() const { return E * 1e9 * std::pow(t * 1e-3, 3) / (12 * (1 - nu * nu)); }
  /// lambda = omega a^2 sqrt(rho t / D)
  [[nodiscard]] double lambda(double hertz) const {
    return 2 * pi * hertz * a * a * 1e-6 * std::sqrt(rho * t * 1e-3 / D());
  }
};

std::string panel(const Plate& p) {
  return head(p.E, p.nu, p.rho) + "[[panel]]\nname = \"plate\"\ncorner = " + point({0, 0, 0}) +
         "\nedge_a = " + point({p.a, 0, 0}) + "\nedge_b = " + point({0, p.b, 0}) + "\nthickness = " + mm(p.t) +
         "\nmaterial = \"m\"\ndivisions = [" + std::to_string(p.na) + ", " + std::to_string(p.nb) + "]\n";
}

std::string edge(const Eigen::Vector3d& from, const Eigen::Vector3d& to, const std::string& holds) {
  return "[[hold]]\nfrom = " + point(from) + "\nto = " + point(to) + "\nholds = [" + holds + "]\n";
}

/// Edges in the order x = 0, x = a, y = 0, y = b: 's'imply supported, 'c'lamped, 'f'ree.
std::string edges(const Plate& p, const std::string& kinds) {
  const std::array<std::array<Eigen::Vector3d, 2>, 4> lines{{{{{0, 0, 0}, {0, p.b, 0}}},
                                                             {{{p.a, 0, 0}, {p.a, p.b, 0}}},
                                                             {{{0, 0, 0}, {p.a, 0, 0}}},
                                                             {{{0, p.b, 0}, {p.a, p.b, 0}}}}};
  std::string out;
  for (std::size_t i = 0; i < 4; ++i) {
    const std::string along = i < 2 ? "\"rx\"" : "\"ry\""; // the rotation that a straight edge can't make
    if (kinds[i] == 's') out += edge(lines[i][0], lines[i][1], "\"z\", " + along);
    if (kinds[i] == 'c') out += edge(lines[i][0], lines[i][1], "\"z\", \"rx\", \"ry\"");
  }
  return out;
}

void vibrate(const std::string& id, const std::string& kinds, int rigid, const std::vector<double>& reference,
             double tolerance) {
  const Plate p;
  const int wanted = static_cast<int>(reference.size());
  const std::vector<double> f = frequencies(vibrating(panel(p) + edges(p, kinds), wanted + rigid));
  ASSERT_EQ(static_cast<int>(f.size()), wanted);
  for (std::size_t i = 0; i < f.size(); ++i)
    record(id, ritz, kinds + ", lambda " + std::to_string(i + 1), p.lambda(f[i]), reference[i], tolerance);
}

// Linear elements find omega^2 too high by (k h)^2 / 6 or so for each wave number k; two half waves on 40 elements.
constexpr double plate_mesh_error = 0.006;

TEST(Leissa, SimplySupportedSquare) {
  vibrate("B40", "ssss", 3, {19.7392, 49.3480, 49.3480, 78.9568}, plate_mesh_error);
}
TEST(Leissa, ClampedSquare) {
  vibrate("B40", "cccc", 3, {35.9852, 73.3938, 73.3938, 108.2165}, 2 * plate_mesh_error);
}
TEST(Leissa, CantileverSquare) {
  vibrate("B41", "cfff", 3, {3.471, 8.506, 21.284, 27.199, 30.955, 54.185}, plate_mesh_error);
}
TEST(Leissa, FreeSquare) {
  vibrate("B42", "ffff", 6, {13.468, 19.596, 24.270, 34.801, 34.801, 61.093, 61.093, 63.686}, 2 * plate_mesh_error);
}

TEST(NafemsFv12, FreeThinSquarePlate) {
  Plate p{10000, 10000, 50};
  const std::vector<double> f = frequencies(vibrating(panel(p), 14));
  const std::vector<double> reference{1.622, 2.360, 2.922, 4.190, 4.190, 7.356, 7.356, 7.668};
  ASSERT_EQ(f.size(), reference.size());
  for (std::size_t i = 0; i < f.size(); ++i)
    record("D5", "The Standard NAFEMS Benchmarks, TNSB Rev. 3, 1990, FV12 (converged values)",
           "flexible mode " + std::to_string(i + 1), f[i], reference[i], 2 * plate_mesh_error, "Hz");
}

std::string line(const Eigen::Vector3d& from, const Eigen::Vector3d& to, const Eigen::Vector3d& per_mm) {
  return "[[load]]\nfrom = " + point(from) + "\nto = " + point(to) + "\nper_length = [" + quantity(per_mm.x(), "N/mm") +
         ", " + quantity(per_mm.y(), "N/mm") + ", " + quantity(per_mm.z(), "N/mm") + "]\n";
}

/// k of sigma = k pi^2 D / (b^2 t) at which the plate buckles. \param shear on all edges, else pressed along x.
double k_of(const Plate& p, const std::string& kinds, bool shear) {
  std::string text = panel(p) + edges(p, kinds) + "[solve]\nelement_size = " + mm(p.b / p.nb) + "\n" +
                     hold({0, 0, 0}, "\"x\", \"y\"") + hold({p.a, 0, 0}, "\"y\"");
  const Eigen::Vector3d o(0, 0, 0), x(p.a, 0, 0), y(0, p.b, 0), z(p.a, p.b, 0);
  if (shear)
    text += line(o, y, {0, -1, 0}) + line(x, z, {0, 1, 0}) + line(o, x, {-1, 0, 0}) + line(y, z, {1, 0, 0});
  else
    text += line(o, y, {1, 0, 0}) + line(x, z, {-1, 0, 0});
  const Findings f = buckling(text, 1);
  if (f.modes->buckling_factors.empty()) return 0;
  const double b = p.b * 1e-3; // the load is 1 N/mm = 1000 N/m
  return f.modes->buckling_factors[0] * 1000 * b * b / (pi * pi * p.D());
}

void pressed(const std::string& id, const std::string& what, double ratio, const std::string& kinds, double k,
             double tolerance, double nu = 0.3) {
  Plate p;
  p.nu = nu;
  p.a = ratio * p.b;
  p.nb = 24;
  p.na = std::max(24, static_cast<int>(std::lround(24 * ratio)));
  record(id, ritz, what, k_of(p, kinds, false), k, tolerance);
}

// A half wave on 24 elements: (pi / 24)^2 / 6 of bending stiffness each way, and as much in the stress field.
constexpr double buckling_error = 0.01;

TEST(TimoshenkoGerePlates, PressedAlongOneAxis) {
  pressed("E10", "k, all edges simply supported, a/b = 1", 1, "ssss", 4.0, buckling_error);
  pressed("E10", "k, all edges simply supported, a/b = 2", 2, "ssss", 4.0, buckling_error);
  pressed("E11", "k, long edges clamped, a/b = 3 x 0.661", 1.983, "sscc", 6.971, 2 * buckling_error);
  pressed("E12", "k, one long edge free, a/b = 1", 1, "sssf", 1.4016, buckling_error);
  pressed("E12", "k, one long edge free, a/b = 5", 5, "sssf", 0.4642, buckling_error);
  pressed("E13", "k, one long edge clamped, the other free, a/b = 1.65", 1.65, "sscf", 1.280, buckling_error);
  pressed("E13", "k, one long edge clamped, the other free, a/b = 1.65, nu = 0.25", 1.65, "sscf", 1.329, buckling_error,
          0.25);
}

TEST(TimoshenkoGerePlates, OneLongEdgeClampedTheOtherSupported) {
  // Least where a/b = 0.80 m.
  pressed("E11", "k, one long edge clamped, the other simply supported, a/b = 1.6", 1.6, "sscs", 5.410,
          2 * buckling_error);
}

TEST(TimoshenkoGerePlates, Sheared) {
  Plate p;
  p.na = p.nb = 24;
  record("E14", ritz, "k, shear, a/b = 1", k_of(p, "ssss", true), 9.3245, 2 * buckling_error);
  p.a = 2000;
  p.na = 48;
  record("E14", ritz, "k, shear, a/b = 2", k_of(p, "ssss", true), 6.546, 2 * buckling_error);
  p.a = 5000;
  p.na = 120;
  record("E14", ritz, "k, shear, a/b = 5", k_of(p, "ssss", true), 5.530, 2 * buckling_error);
}

} // namespace
} // namespace bedbow::verification
