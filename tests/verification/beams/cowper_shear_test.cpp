#include "mesh/piece/shape/thin_wall.h"
#include "mesh/piece/shapes.h"

#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

namespace bedbow::verification {

namespace {
Shape sizes(double width, double height, double wall = 0, double diameter = 0) {
  Shape s;
  s.width = width;
  s.height = height;
  s.wall = wall;
  s.diameter = diameter;
  return s;
}
} // namespace

TEST(Cowper1966, Rectangle) {
  const char* source = "Cowper, J. Appl. Mech. 33 (1966) 335-340";
  const auto kappa = [](double nu) {
    const SectionProperties p = rectangle_section(sizes(0.02, 0.06), nu).props;
    return p.Az / p.A;
  };
  record("A8", source, "kappa of a rectangle, nu = 0.3", kappa(0.3), 0.8496732, 1e-7);
  record("A8", source, "kappa of a rectangle, nu = 0", kappa(0), 0.8333333, 1e-7);
}

TEST(Cowper1966, RoundAndThinPipe) {
  const char* source =
      "Cowper 1966, derived again in docs/theory/sections.md: 6(1+nu)/(7+6nu), thin tube 2(1+nu)/(4+3nu)";
  const SectionProperties solid = round_section(sizes(0, 0, 0, 0.02), 0.3).props;
  record("", source, "kappa of a circle, nu = 0.3", solid.Az / solid.A, 7.8 / 8.8, 1e-12);
  const SectionProperties pipe = pipe_section(sizes(0, 0, 1e-6, 0.1), 0.3).props;
  record("", source, "kappa of a very thin pipe, nu = 0.3", pipe.Az / pipe.A, 2.6 / 4.9, 1e-4);
}

// At nu = 0 Cowper's coefficient is that of the strain energy of the shear flow. Under V along its webs a box carries
// no flow in the middle of its flanges, so each half is an open channel.
TEST(Cowper1966, BoxAgainstEnergyOfTheFlow) {
  for (const auto& [b, h] : {std::pair{0.1, 0.05}, {0.05, 0.1}, {0.06, 0.06}}) {
    const double t = 1e-4;
    const SectionProperties box = tube_section(sizes(b + t, h + t, t), 0).props;
    const ThinWall half = thin_wall({{{b / 2, 0}, {0, 0}, {0, h}, {b / 2, h}}, t});
    record("", "strain energy of the shear flow in half a box, nu = 0", "kappa of a thin box", box.Az / box.A,
           2 * half.Az / box.A, 1e-9);
  }
}

} // namespace bedbow::verification
