// Torsion through a whole case: a member of rectangular section, held at one end and twisted at the other by a moment.
#include "tests/verification/support/record.h"
#include "tests/verification/support/whole_program.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow::verification {
namespace {

constexpr double G = 80000, t = 12, member_length = 700, moment = 50000; // N/mm^2, mm, N mm

/// Member along a slanting line, so that nothing is special about its axes. \param shape lines of TOML.
Findings twisted(const std::string& shape) {
  const Eigen::Vector3d along = Eigen::Vector3d(2, -1, 2).normalized(), up = Eigen::Vector3d(-2, -2, 1).normalized();
  const Eigen::Vector3d tip = member_length * along, M = moment * along;
  // A spot on the axis of the section's height, carried rigidly by the tip: it moves by the twist times its distance.
  return solved(
      R"([material.steel]
E = "208 GPa"
G = "80 GPa"
nu = 0.3
yield = "275 MPa"
[[member]]
name = "shaft"
from = ["0 mm", "0 mm", "0 mm"]
to = )" +
      point(tip) + "\n" + shape +
      R"(up = [-2, -2, 1]
material = "steel"
[[hold]]
at = ["0 mm", "0 mm", "0 mm"]
holds = ["x", "y", "z", "rx", "ry", "rz"]
[[load]]
at = )" +
      point(tip) + "\nmoment = [" + quantity(M.x(), "N*mm") + ", " + quantity(M.y(), "N*mm") + ", " +
      quantity(M.z(), "N*mm") + R"(]
[[dial]]
name = "rim"
on = "shaft"
at = )" +
      point(tip + 20 * up) +
      R"(
[[dial]]
name = "axis"
on = "shaft"
at = )" +
      point(tip) + "\n");
}

double twist(const Findings& f) {
  return (dial(f, "rim") - dial(f, "axis")).norm() / 20;
}

TEST(TorsionThroughTheProgram, Rectangles) {
  const std::string source = "Saint-Venant's series, tests/reference/ritz.txt; three digits: scribd.com/doc/149903883";
  struct Row {
    const char* id;
    double ratio, beta, alpha;
  };
  const Row rows[] = {{"G1", 1, 0.14058, 0.20817}, {"G2", 1.2, 0.16612, 0.21893}, {"G3", 1.5, 0.19576, 0.23097},
                      {"G4", 2, 0.22868, 0.24588}, {"G5", 2.5, 0.24937, 0.25759}, {"G6", 3, 0.26332, 0.26721},
                      {"G7", 4, 0.28081, 0.28167}, {"G8", 5, 0.29132, 0.29150}};
  for (const Row& r : rows) {
    const double b = r.ratio * t;
    const Findings f = twisted("shape = \"rectangle\"\nwidth = " + mm(b) + "\nheight = " + mm(t) + "\n");
    const std::string size = ", b/t = " + std::to_string(r.ratio).substr(0, 3);
    record(r.id, source, "beta from the twist" + size, moment * member_length / (G * twist(f) * b * t * t * t), r.beta,
           0.000005 / r.beta);
    record(r.id, source, "alpha from the stress" + size,
           moment / (f.steps[0].bars.at(0).stress / std::sqrt(3.0) * 1e-6 * b * t * t), r.alpha, 0.000005 / r.alpha);
  }
}

TEST(TorsionThroughTheProgram, ClosedBox) {
  const Findings f = twisted(R"(shape = "tube"
width = "100 mm"
height = "50 mm"
wall = "4 mm"
)");
  record("G11", "Bredt 1896, J = 4 Am^2 / sum(s/t), as in pont.ist/torsion-constant", "J from the twist",
         moment * member_length / (G * twist(f)), 1098651, 1e-6, "mm^4");
  record("G11", "tau = T/(2 Am t), Am = 96 x 46", "shear from von Mises",
         f.steps[0].bars.at(0).stress / std::sqrt(3.0) * 1e-6, moment / (2 * 96 * 46 * 4.0), 1e-9, "MPa");
}

TEST(TorsionThroughTheProgram, RoundBar) {
  const Findings f = twisted("shape = \"round\"\ndiameter = \"20 mm\"\n");
  record("", "Coulomb: J = pi d^4/32", "J from the twist", moment * member_length / (G * twist(f)),
         std::numbers::pi / 32 * 160000, 1e-9, "mm^4");
}

} // namespace
} // namespace bedbow::verification
