#include "mesh/piece/shape/saint_venant.h"
#include "mesh/piece/shapes.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

#include <string>

namespace bedbow::verification {

namespace {

struct Row {
  const char* id;
  double ratio, beta, alpha;
};

// J = beta b t^3, tau_max = T/(alpha b t^2).
constexpr Row rows[] = {
    {"G1", 1, 0.14058, 0.20817}, {"G2", 1.2, 0.16612, 0.21893}, {"G3", 1.5, 0.19576, 0.23097},
    {"G4", 2, 0.22868, 0.24588}, {"G5", 2.5, 0.24937, 0.25759}, {"G6", 3, 0.26332, 0.26721},
    {"G7", 4, 0.28081, 0.28167}, {"G8", 5, 0.29132, 0.29150},
};

Shape box(double width, double height, double wall) {
  Shape s;
  s.width = width;
  s.height = height;
  s.wall = wall;
  return s;
}

} // namespace

TEST(TimoshenkoGoodierArt109, RectangleInTorsion) {
  const std::string source = "Saint-Venant's series, tests/reference/ritz.txt; three digits: scribd.com/doc/149903883";
  for (const Row& r : rows) {
    const RectangleTorsion t = rectangle_torsion(r.ratio, 1);
    record(r.id, source, "beta, b/t = " + std::to_string(r.ratio).substr(0, 3), t.J / r.ratio, r.beta,
           0.000005 / r.beta);
    record(r.id, source, "alpha, b/t = " + std::to_string(r.ratio).substr(0, 3), 1 / (t.tau_long * r.ratio), r.alpha,
           0.000005 / r.alpha);
  }
  record("G9", source, "beta, b/t = 10", rectangle_torsion(10, 1).J / 10, 0.31233, 0.000005 / 0.31233);
  record("G9", source, "beta, b/t = 1e6", rectangle_torsion(1e6, 1).J / 1e6, 1.0 / 3, 1e-6);
}

// Roark's closed approximation of the same constant: within half a per cent of the series.
TEST(RoarkTable107, RectangleApproximation) {
  for (const Row& r : rows) {
    const double s = 1 / r.ratio;
    const double approx = 1.0 / 3 - 0.21 * s * (1 - s * s * s * s / 12);
    record(r.id, "Roark, J = b t^3 [1/3 - 0.21 (t/b)(1 - t^4/12b^4)], good to 0.5 %",
           "beta, b/t = " + std::to_string(r.ratio).substr(0, 3), rectangle_torsion(r.ratio, 1).J / r.ratio, approx,
           0.005);
  }
}

TEST(Bredt1896, ClosedBox) {
  const Section s = tube_section(box(0.1, 0.05, 0.004), 0.3);
  record("G11", "Bredt 1896, J = 4 Am^2 / sum(s/t), as in pont.ist/torsion-constant", "J of box 100 x 50 x 4",
         s.props.J * 1e12, 1098651, 5e-7, "mm^4");
  const double tau = 1 / (2 * 0.096 * 0.046 * 0.004);
  record("G11", "tau = T/(2 Am t), Am = 96 x 46", "tau per T", s.points.front().tau_T.norm(), tau, 1e-12, "1/m^3");
  for (const StressPoint& p : s.points) EXPECT_NEAR(p.tau_T.norm() / tau, 1, 1e-12);
}

TEST(OpenThinWall, SumOfStrips) {
  const Section angle = angle_section(box(0.06, 0.04, 0.006), 0.3);
  record("G12", "open thin wall, sum b t^3/3, scribd.com/doc/149903883; middle lines 57 + 37", "J of angle 60 x 40 x 6",
         angle.props.J * 1e12, (57 + 37) * 216.0 / 3, 1e-9, "mm^4");
  const Section channel = channel_section(box(0.05, 0.1, 0.006), 0.3);
  record("G12", "open thin wall, sum b t^3/3, scribd.com/doc/149903883; middle lines 47 + 94 + 47",
         "J of channel 50 x 100 x 6", channel.props.J * 1e12, (47 + 94 + 47) * 216.0 / 3, 1e-9, "mm^4");
}

} // namespace bedbow::verification
