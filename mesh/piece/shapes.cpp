#include "mesh/piece/shapes.h"

#include <cmath>

namespace bedbow {

namespace {

SectionMaker with_turn(Section (*make)(const Shape&, double)) {
  return [make](const Shape& shape, double nu) {
    const Section own = make(shape, nu);
    return shape.turn == 0 ? own : turned(own, shape.turn);
  };
}

} // namespace

Section turned(const Section& section, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  Eigen::Matrix2d R;
  R << c, -s, s, c;
  Section out = section;
  SectionProperties& p = out.props;
  const SectionProperties& o = section.props;
  p.Iyy = c * c * o.Iyy + s * s * o.Izz + 2 * c * s * o.Iyz;
  p.Izz = s * s * o.Iyy + c * c * o.Izz - 2 * c * s * o.Iyz;
  p.Iyz = (c * c - s * s) * o.Iyz + c * s * (o.Izz - o.Iyy);
  p.Ay = 1 / (c * c / o.Ay + s * s / o.Az);
  p.Az = 1 / (s * s / o.Ay + c * c / o.Az);
  p.shear_centre = R * o.shear_centre;
  for (StressPoint& point : out.points) {
    const Eigen::Vector2d at = R * Eigen::Vector2d(point.y, point.z);
    point.y = at.x();
    point.z = at.y();
    const Eigen::Vector2d tau_Vy = R * point.tau_Vy, tau_Vz = R * point.tau_Vz;
    point.tau_Vy = c * tau_Vy - s * tau_Vz; // unit Vy is (c, -s) in the section's own axes
    point.tau_Vz = s * tau_Vy + c * tau_Vz;
    point.tau_T = R * point.tau_T;
  }
  for (auto& loop : out.outline)
    for (Eigen::Vector2d& corner : loop) corner = R * corner;
  p.lower = p.upper = out.outline.front().front();
  for (const Eigen::Vector2d& corner : out.outline.front()) {
    p.lower = p.lower.cwiseMin(corner);
    p.upper = p.upper.cwiseMax(corner);
  }
  return out;
}

void builtin_shapes(Registry<ShapeEntry>& shapes) {
  const char* built_in = "built in";
  const char* cowper = "Cowper, J. Appl. Mech. 33 (1966) 335-340";
  shapes.add({"rectangle",
              "flat or square bar",
              std::string("Timoshenko & Goodier art. 109; ") + cowper,
              {"width", "height"},
              with_turn(rectangle_section),
              built_in,
              {0.016, 0.08}});
  shapes.add({"tube",
              "rectangular hollow section",
              std::string("Bredt 1896; ") + cowper,
              {"width", "height", "wall"},
              with_turn(tube_section),
              built_in,
              {0.04, 0.06, 0.003}});
  shapes.add({"round", "round bar", cowper, {"diameter"}, with_turn(round_section), built_in, {0.02}});
  shapes.add({"pipe", "round tube", cowper, {"diameter", "wall"}, with_turn(pipe_section), built_in, {0.03, 0.003}});
  shapes.add({"angle",
              "one leg along +y at the bottom, one along +z at the front",
              "thin-walled theory",
              {"width", "height", "wall"},
              with_turn(angle_section),
              built_in,
              {0.04, 0.06, 0.004}});
  shapes.add({"channel",
              "web along z at the front, flanges towards +y",
              "thin-walled theory",
              {"width", "height", "wall"},
              with_turn(channel_section),
              built_in,
              {0.03, 0.06, 0.004}});
  shapes.add({"section",
              "given properties",
              "case",
              {"A", "Iyy", "Izz", "J"},
              with_turn(given_section),
              built_in,
              {1.28e-3, 6.83e-7, 2.73e-8, 9.55e-8}});
}

} // namespace bedbow
