#include "mesh/piece/shapes.h"

#include "tests/unit/mesh/piece/section_probe.h"
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

Shape shape(const char* kind, double width, double height, double wall = 0, double diameter = 0, double turn = 0) {
  Shape s;
  s.kind = kind;
  s.width = width;
  s.height = height;
  s.wall = wall;
  s.diameter = diameter;
  s.turn = turn;
  return s;
}

Registry<ShapeEntry> shapes() {
  Registry<ShapeEntry> r("section shape");
  builtin_shapes(r);
  return r;
}

std::vector<Shape> one_of_each(double turn = 0) {
  Shape given = shape("section", 0, 0, 0, 0, turn);
  given.given = {{"A", 8e-4}, {"Iyy", 4e-7}, {"Izz", 1e-7}, {"Iyz", 5e-8}, {"J", 2e-8}};
  return {shape("rectangle", 0.016, 0.08, 0, 0, turn),
          shape("tube", 0.1, 0.05, 0.004, 0, turn),
          shape("round", 0, 0, 0, 0.02, turn),
          shape("pipe", 0, 0, 0.003, 0.04, turn),
          shape("angle", 0.06, 0.04, 0.006, 0, turn),
          shape("channel", 0.05, 0.1, 0.006, 0, turn),
          given};
}

} // namespace

// Areas and moments of inertia against Green's theorem round the drawn outline, which also proves that the centroid is
// the origin. The 48-sided polygon that draws a circle falls short of it by 0.6 % in I.
TEST(Shapes, PropertiesMatchTheDrawnOutline) {
  const auto registry = shapes();
  for (const double turn : {0.0, 0.3, 1.7})
    for (const Shape& s : one_of_each(turn)) {
      if (s.kind == "section") continue;
      const Section section = registry.get(s.kind).make(s, 0.3);
      const auto m = testing::outline_moments(section.outline);
      const SectionProperties& p = section.props;
      const bool curved = s.kind == "round" || s.kind == "pipe";
      const double tolerance = curved ? 0.006 : 1e-9, size = std::sqrt(p.A);
      EXPECT_NEAR(m.A / p.A, 1, tolerance) << s.kind;
      EXPECT_NEAR(m.Iyy / p.Iyy, 1, tolerance) << s.kind;
      EXPECT_NEAR(m.Izz / p.Izz, 1, tolerance) << s.kind;
      EXPECT_NEAR((m.Iyz - p.Iyz) / (p.Iyy + p.Izz), 0, 1e-9) << s.kind;
      EXPECT_NEAR(m.Sy / (p.A * size), 0, 1e-9) << s.kind;
      EXPECT_NEAR(m.Sz / (p.A * size), 0, 1e-9) << s.kind;
    }
}

TEST(Shapes, EveryPointLiesWithinTheSection) {
  const auto registry = shapes();
  for (const double turn : {0.0, 0.7})
    for (const Shape& s : one_of_each(turn)) {
      const Section section = registry.get(s.kind).make(s, 0.3);
      for (const StressPoint& p : section.points) {
        EXPECT_GE(p.y, section.props.lower.x() - 1e-12) << s.kind;
        EXPECT_LE(p.y, section.props.upper.x() + 1e-12) << s.kind;
        EXPECT_GE(p.z, section.props.lower.y() - 1e-12) << s.kind;
        EXPECT_LE(p.z, section.props.upper.y() + 1e-12) << s.kind;
      }
    }
}

TEST(Shapes, InvariantsOfTurning) {
  const auto registry = shapes();
  for (std::size_t i = 0; i < one_of_each().size(); ++i) {
    const Shape straight = one_of_each()[i];
    const SectionProperties p = registry.get(straight.kind).make(straight, 0.3).props;
    Shape s = straight;
    s.turn = 0.9;
    const SectionProperties q = registry.get(s.kind).make(s, 0.3).props;
    EXPECT_NEAR((q.Iyy + q.Izz) / (p.Iyy + p.Izz), 1, 1e-12) << s.kind;
    EXPECT_NEAR((q.Iyy * q.Izz - q.Iyz * q.Iyz) / (p.Iyy * p.Izz - p.Iyz * p.Iyz), 1, 1e-12) << s.kind;
    EXPECT_NEAR(q.shear_centre.norm(), p.shear_centre.norm(), 1e-15) << s.kind;
    EXPECT_EQ(q.J, p.J);
  }
}

// The stress state does not care in which axes forces are written: turning the section and the forces together leaves
// the worst von Mises stress and every point's stress as they are.
TEST(Shapes, TurningSectionAndForcesTogetherChangesNoStress) {
  const auto registry = shapes();
  const double turn = 0.6, c = std::cos(turn), s = std::sin(turn);
  const SectionForces f{1200, 300, -800, 9, 70, -25};
  const SectionForces g{f.N, c * f.Vy - s * f.Vz, s * f.Vy + c * f.Vz, f.T, c * f.My - s * f.Mz, s * f.My + c * f.Mz};
  for (std::size_t i = 0; i < one_of_each().size(); ++i) {
    const Shape straight = one_of_each()[i], leaning = one_of_each(turn)[i];
    const Section a = registry.get(straight.kind).make(straight, 0.3),
                  b = registry.get(leaning.kind).make(leaning, 0.3);
    const auto worst = worst_von_mises(a, f);
    EXPECT_NEAR(worst_von_mises(b, g).first / worst.first, 1, 1e-10) << straight.kind;
    for (std::size_t k = 0; k < a.points.size(); ++k) {
      const double before = direct_stress(a.props, f, a.points[k].y, a.points[k].z);
      const double after = direct_stress(b.props, g, b.points[k].y, b.points[k].z);
      EXPECT_NEAR(before, after, 1e-9 * worst.first) << straight.kind;
      EXPECT_NEAR(shear_stress(a.points[k], f).norm(), shear_stress(b.points[k], g).norm(), 1e-9 * worst.first)
          << straight.kind;
    }
  }
}

TEST(Shapes, QuarterTurnSwapsWidthAndHeight) {
  const auto registry = shapes();
  for (const char* kind : {"rectangle", "tube"}) {
    const double wall = kind == std::string("tube") ? 0.005 : 0;
    const auto& make = registry.get(kind).make;
    const Section lying = make(shape(kind, 0.08, 0.03, wall, 0, std::numbers::pi / 2), 0.3);
    const Section standing = make(shape(kind, 0.03, 0.08, wall), 0.3);
    EXPECT_NEAR(lying.props.Iyy / standing.props.Iyy, 1, 1e-12);
    EXPECT_NEAR(lying.props.Ay / standing.props.Ay, 1, 1e-12);
    EXPECT_NEAR(lying.props.Az / standing.props.Az, 1, 1e-12);
    const SectionForces f{1000, 200, 500, 11, 40, 30};
    EXPECT_NEAR(worst_von_mises(lying, f).first / worst_von_mises(standing, f).first, 1, 1e-12) << kind;
  }
}

// A channel turned by half a turn looks the other way: its shear centre changes sides.
TEST(Shapes, ChannelLooksAsDocumented) {
  const auto registry = shapes();
  const auto& make = registry.get("channel").make;
  const SectionProperties p = make(shape("channel", 0.05, 0.1, 0.006), 0.3).props;
  EXPECT_LT(p.shear_centre.x(), p.lower.x()); // in front of the web, outside the section
  EXPECT_NEAR(p.shear_centre.y(), 0, 1e-12);
  EXPECT_LT(-p.lower.x(), p.upper.x()); // centroid nearer the web
  const SectionProperties q = make(shape("channel", 0.05, 0.1, 0.006, 0, std::numbers::pi), 0.3).props;
  EXPECT_NEAR(q.shear_centre.x(), -p.shear_centre.x(), 1e-12);
}

TEST(Shapes, AngleLooksAsDocumented) {
  const auto registry = shapes();
  const Section s = registry.get("angle").make(shape("angle", 0.06, 0.04, 0.006), 0.3);
  EXPECT_NEAR(s.props.shear_centre.x(), s.props.lower.x() + 0.003, 1e-12); // where the middle lines of the legs meet
  EXPECT_NEAR(s.props.shear_centre.y(), s.props.lower.y() + 0.003, 1e-12);
  EXPECT_LT(s.props.Iyz, 0); // legs towards +y at the bottom and +z at the front
}

TEST(Shapes, MisuseNamesTheSizeAndWhatWouldBeRight) {
  const auto registry = shapes();
  const auto message = [&](const Shape& s) {
    try {
      (void)registry.get(s.kind).make(s, 0.3);
    } catch (const std::invalid_argument& e) {
      return std::string(e.what());
    }
    return std::string("nothing thrown");
  };
  EXPECT_EQ(message(shape("rectangle", 0.02, -0.003)), "rectangle: height must be greater than 0, but is -3 mm");
  EXPECT_EQ(message(shape("rectangle", std::nan(""), 0.1)), "rectangle: width must be greater than 0, but is nan mm");
  EXPECT_EQ(message(shape("tube", 0.1, 0.05, 0.03)),
            "tube: wall must be less than half of the lesser side (25 mm), but is 30 mm");
  EXPECT_EQ(message(shape("round", 0, 0)), "round: diameter must be greater than 0, but is 0 mm");
  EXPECT_EQ(message(shape("pipe", 0, 0, 0.02, 0.03)),
            "pipe: wall must be less than half of the diameter (15 mm), but is 20 mm");
  EXPECT_EQ(message(shape("angle", 0.05, 0.03, 0.03)),
            "angle: wall must be less than the lesser leg (30 mm), but is 30 mm");
  EXPECT_EQ(message(shape("channel", 0.05, 0.02, 0.01)),
            "channel: wall must be less than the flange width and half of the height (10 mm), but is 10 mm");
  Shape given = shape("section", 0, 0);
  given.given = {{"A", 1e-3}, {"Iyy", 1e-6}, {"Izz", 1e-6}};
  EXPECT_EQ(message(given), "section: J is missing");
  given.given["J"] = 1e-7;
  given.given["Iyz"] = 1e-6;
  EXPECT_EQ(message(given), "section: Iyz^2 must be less than Iyy Izz, as in every real section");
  given.given["Iyz"] = 0;
  given.given["Ixx"] = 1;
  EXPECT_EQ(message(given).substr(0, 31), "section: unknown property 'Ixx'");
}

// Of a rectangle's constants, given as numbers, come the rectangle's greatest stresses: 1.5 V/A, and with its Wt given
// T/Wt; where Wt is left out J over the lesser side, which a thin strip (b t^3/3 over t) has exactly.
TEST(Shapes, GivenSectionHasTheStressOfItsRectangle) {
  Shape given = shape("section", 0, 0);
  given.width = 0.002;
  given.height = 0.1;
  const double A = 2e-4, J = 0.1 * 8e-9 / 3;
  given.given = {{"A", A}, {"Iyy", 0.002 * 1e-3 / 12}, {"Izz", 0.1 * 8e-9 / 12}, {"J", J}};
  const auto greatest = [](const Section& s, auto stress) {
    double out = 0;
    for (const StressPoint& p : s.points) out = std::max(out, Eigen::Vector2d(stress(p)).norm());
    return out;
  };
  const Section s = shapes().get("section").make(given, 0.3);
  EXPECT_NEAR(greatest(s, [](const StressPoint& p) { return p.tau_Vy; }), 1.5 / A, 1e-9 / A);
  EXPECT_NEAR(greatest(s, [](const StressPoint& p) { return p.tau_Vz; }), 1.5 / A, 1e-9 / A);
  EXPECT_NEAR(greatest(s, [](const StressPoint& p) { return p.tau_T; }), 3 / (0.1 * 0.002 * 0.002), 1e-6);
  given.given["Wt"] = 2 * J;
  const Section with = shapes().get("section").make(given, 0.3);
  EXPECT_NEAR(greatest(with, [](const StressPoint& p) { return p.tau_T; }), 1 / (2 * J), 1e-9 / J);
}

TEST(Shapes, RegisteringTwiceIsRefused) {
  auto registry = shapes();
  EXPECT_THROW(builtin_shapes(registry), std::invalid_argument);
}

} // namespace bedbow
