// MacNeal & Harder, A proposed standard set of problems to test finite element accuracy, Finite Elements in Analysis
// and Design 1 (1985) 3-20: patch tests, straight, curved and twisted beams, plates.
#include "tests/verification/plates/plate_model.h"
#include "tests/verification/support/record.h"
#include <gtest/gtest.h>

namespace bedbow::verification {
namespace {

const std::string paper = "MacNeal & Harder 1985";
constexpr double exact = 1e-10;

/// Five quadrilaterals in a rectangle 0.24 x 0.12 (inputs as the inner nodes' movements in a published solution give
/// them back).
ShellModel patch() {
  ShellModel m(ShellData{1e6, 0.25, 0.001, 1});
  for (const Point& p : {Point(0, 0, 0), Point(.24, 0, 0), Point(.24, .12, 0), Point(0, .12, 0), Point(.04, .02, 0),
                         Point(.18, .03, 0), Point(.16, .08, 0), Point(.08, .08, 0)})
    m.add_node(p);
  for (const auto& q : {std::array{0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}, {4, 5, 6, 7}}) m.add_quad(q);
  return m;
}

/// Greatest departure of n (or m) at any corner from what is constant, in the plate's axes, over its size.
double departure(const ShellModel& model, const Eigen::Vector3d& n, const Eigen::Vector3d& m) {
  double worst = 0;
  for (int e = 0; e < 5; ++e) {
    const Eigen::Matrix3d axes = shell_axes(model.corners(e));
    const double c = axes(0, 0), s = axes(0, 1);
    const auto into = [&](const Eigen::Vector3d& t) {
      return Eigen::Vector3d(c * c * t[0] + s * s * t[1] + 2 * c * s * t[2],
                             s * s * t[0] + c * c * t[1] - 2 * c * s * t[2],
                             c * s * (t[1] - t[0]) + (c * c - s * s) * t[2]);
    };
    for (const auto& r : shell_corner_resultants(model.corners(e), model.data(), model.element_motion(e))) {
      if (n.norm() > 0) worst = std::max(worst, (r.n - into(n)).norm() / n.norm());
      if (m.norm() > 0) worst = std::max(worst, (r.m - into(m)).norm() / m.norm());
    }
  }
  return worst;
}

TEST(MacNealHarder, MembranePatch) {
  ShellModel m = patch();
  for (int i = 0; i < 4; ++i) {
    const Point p = m.nodes()[i];
    m.hold(i, {0}, 1e-3 * (p.x() + p.y() / 2));
    m.hold(i, {1}, 1e-3 * (p.y() + p.x() / 2));
    m.hold(i, {2, 3, 4, 5});
  }
  m.solve();
  const double t = m.data().thickness;
  record("C1", paper + ", inputs as in a published solution of the bending patch; derived",
         "departure from s_x = s_y = 4000/3, tau = 400",
         departure(m, {t * 4000 / 3, t * 4000 / 3, t * 400}, Eigen::Vector3d::Zero()), 0, exact);
}

TEST(MacNealHarder, BendingPatch) {
  ShellModel m = patch();
  for (int i = 0; i < 4; ++i) {
    const double x = m.nodes()[i].x(), y = m.nodes()[i].y();
    m.hold(i, {2}, 1e-3 * (x * x + x * y + y * y) / 2);
    m.hold(i, {3}, 1e-3 * (y + x / 2));
    m.hold(i, {4}, -1e-3 * (x + y / 2));
    m.hold(i, {0, 1, 5});
  }
  m.solve();
  // Our m_xx > 0 stretches the upper face: of the other sign than w's curvature.
  record("C2", paper + ", inputs as in a published solution of the bending patch; derived",
         "departure from M_x = M_y = 1e-6/9, M_xy = 1e-7/3",
         departure(m, Eigen::Vector3d::Zero(), {-1e-6 / 9, -1e-6 / 9, -1e-7 / 3}), 0, exact);
}

enum class ElementShape { rectangles, trapezoids, parallelograms };

/// Cantilever 6 x 0.2 x 0.1. \param fine elements across, and six times as many along.
ShellModel straight(ElementShape shape, int fine) {
  ShellModel m(ShellData{1e7, 0.3, 0.1, 1});
  m.add_grid(6 * fine, fine, [&](double a, double b) {
    // The six pieces' borders lean by 45 degrees; finer meshes divide the pieces.
    const double along = 6 * a;
    const int piece = std::min(5, static_cast<int>(along + 1e-9));
    const auto border = [&](int k) {
      const double lean = k == 0 || k == 6 || shape == ElementShape::rectangles ? 0 : 0.2 * (0.5 - b);
      return k + (shape == ElementShape::trapezoids && k % 2 == 0 ? -lean
                  : shape == ElementShape::parallelograms         ? -lean
                                                                  : lean);
    };
    return Point(border(piece) + (along - piece) * (border(piece + 1) - border(piece)), 0.2 * b, 0);
  });
  for (int j = 0; j <= fine; ++j) m.hold(j * (6 * fine + 1), {0, 1, 2, 3, 4, 5});
  return m;
}

std::vector<int> tip_of(int fine) {
  std::vector<int> tip;
  for (int j = 0; j <= fine; ++j) tip.push_back(j * (6 * fine + 1) + 6 * fine);
  return tip;
}

double straight_tip(ElementShape shape, int fine, int direction) {
  ShellModel m = straight(shape, fine);
  const auto tip = tip_of(fine);
  m.edge_load(tip, Point::Unit(direction) / 0.2);
  m.solve();
  return (m.u(tip.front(), direction) + m.u(tip.back(), direction)) / 2;
}

TEST(MacNealHarder, StraightBeamOfManyElements) {
  for (const ElementShape s : {ElementShape::rectangles, ElementShape::trapezoids, ElementShape::parallelograms}) {
    const std::string name = s == ElementShape::rectangles   ? ""
                             : s == ElementShape::trapezoids ? ", trapezoids"
                                                             : ", parallelograms";
    // The beam's references leave out that the clamped root can't contract: 0.4 %, seen with rectangles alike.
    record("C3", paper + ", derived with kappa = 5/6", "extension" + name, straight_tip(s, 4, 0), 3.0e-5, 5e-3);
    record("C3", paper + ", derived with kappa = 5/6", "in-plane" + name, straight_tip(s, 4, 1), 0.108094, 5e-3);
    record("C3", paper + ", derived with kappa = 5/6", "out-of-plane" + name, straight_tip(s, 8, 2), 0.432094, 1e-2);
  }
}

// The element's own mark: six elements, one across.
TEST(MacNealHarder, StraightBeamOfSixElementsInItsPlane) {
  const double rectangles = straight_tip(ElementShape::rectangles, 1, 1) / 0.1081;
  const double trapezoids = straight_tip(ElementShape::trapezoids, 1, 1) / 0.1081;
  const double parallelograms = straight_tip(ElementShape::parallelograms, 1, 1) / 0.1081;
  record("C3", paper, "in-plane, six rectangles, over 0.1081", rectangles, 1, 0.02);
  record("C3", paper, "in-plane, six trapezoids, over 0.1081", trapezoids, 1, 0.02);
  record("C3", paper, "in-plane, six parallelograms, over 0.1081", parallelograms, 1, 0.02);
  EXPECT_GE(rectangles, 0.98);
  // The best figure printed for four nodes is AGQ6-I's 0.994 (Chen, Cen, Long & Yao, Computers & Structures 82, 2004,
  // 35-54; from memory), an element that fails the patch test in its strict form; to as many digits as it is printed.
  record("C3", "Chen, Cen, Long & Yao 2004, AGQ6-I (from memory)", "in-plane, six trapezoids, over 0.1081", trapezoids,
         0.994, 5e-4);
}

TEST(MacNealHarder, StraightBeamTwisted) {
  const int fine = 12;
  ShellModel m = straight(ElementShape::rectangles, fine);
  const auto tip = tip_of(fine);
  // Unit torque as the edge's twisting moments: constant M_xy along the tip.
  for (std::size_t j = 0; j < tip.size(); ++j) m.force(tip[j], 3, (j == 0 || j + 1 == tip.size() ? 0.5 : 1.0) / fine);
  m.solve();
  // The shear-flexible plate's own torsion constant differs from Saint-Venant's by 0.2 % at b/t = 2; the held root
  // adds.
  record("C4", "Saint-Venant, J = 0.228682 b t^3 (published 0.03208 is for one element)", "twist",
         m.u(tip[fine / 2], 3), 0.0341085, 0.02);
}

TEST(MacNealHarder, CurvedBeam) {
  const auto tip_movement = [](int along, int across, int direction) {
    ShellModel m(ShellData{1e7, 0.25, 0.1, 1});
    m.add_grid(along, across, [](double a, double b) {
      const double r = 4.32 - 0.2 * b, angle = a * M_PI / 2; // clockwise from the top, so corners run counter-clockwise
      return Point(r * std::sin(angle), r * std::cos(angle), 0);
    });
    std::vector<int> tip;
    for (int j = 0; j <= across; ++j) {
      m.hold(j * (along + 1), {0, 1, 2, 3, 4, 5});
      tip.push_back(j * (along + 1) + along);
    }
    m.edge_load(tip, Point::Unit(direction) / 0.2);
    m.solve();
    return std::abs(m.u(tip[across / 2], direction));
  };
  record("C5", "Timoshenko & Goodier art. 33 (published 0.08734)", "in-plane", tip_movement(48, 4, 0), 0.088566, 5e-3);
  record("C6", "converged; published 0.5022", "out-of-plane", tip_movement(96, 8, 2), 0.4983016, 1e-2);
}

TEST(MacNealHarder, TwistedBeam) {
  const auto tip_movement = [](int direction) {
    const int along = 48, across = 8;
    ShellModel m(ShellData{29e6, 0.22, 0.32, 1});
    m.add_grid(along, across, [](double a, double b) {
      const double s = 1.1 * (b - 0.5), angle = a * M_PI / 2;
      return Point(12 * a, s * std::cos(angle), s * std::sin(angle));
    });
    std::vector<int> tip;
    for (int j = 0; j <= across; ++j) {
      m.hold(j * (along + 1), {0, 1, 2, 3, 4, 5});
      tip.push_back(j * (along + 1) + along);
    }
    // At the tip the width lies along z: in-plane is z.
    m.edge_load(tip, Point::Unit(direction) / 1.1);
    m.solve();
    return m.u(tip[across / 2], direction);
  };
  const std::string source = paper + "; Zupan & Saje, Finite Elements in Analysis and Design 40 (2004) 1445-1451";
  record("C7", source, "in-plane", tip_movement(2), 0.005424534868, 1e-2);
  record("C7", source, "out-of-plane", tip_movement(1), 0.001753248285, 1e-2);
}

TEST(MacNealHarder, RectangularPlates) {
  const auto plate = [](double b, Edge e, bool force) {
    PlateCase c;
    c.a = 2;
    c.b = b;
    c.thickness = 1e-4; // of side 2: as thin as the paper's
    c.edge_x = c.edge_y = e;
    c.nx = 20;
    c.ny = b > 2 ? 80 : 20;
    // q a^4 / D = 1e-4 * 16 / 1.6e-6; P a^2 / D = 4e-4 * 4 / 1.6e-6.
    return force ? pushed(c) * 4e-4 / 1.6e-6 : pressed(c) * 1e-4 / 1.6e-6;
  };
  const std::string source = paper + ", derived from series";
  record("C9", source, "supported, pressure, b = 2", plate(2, Edge::hard, false), 4.06235, 5e-3);
  record("C9", source, "supported, pressure, b = 10", plate(10, Edge::hard, false), 12.97083, 5e-3);
  record("C10", source, "supported, force, b = 2", plate(2, Edge::hard, true), 11.6008, 5e-3);
  record("C10", source, "supported, force, b = 10", plate(10, Edge::hard, true), 16.9610, 5e-3);
  record("C11", source, "clamped, pressure, b = 2", plate(2, Edge::clamped, false), 1.26532, 5e-3);
  record("C11", source + " (printed 2.56)", "clamped, pressure, b = 10", plate(10, Edge::clamped, false), 2.60423,
         5e-3);
  record("C12", source, "clamped, force, b = 2", plate(2, Edge::clamped, true), 5.612, 5e-3);
  record("C12", source, "clamped, force, b = 10", plate(10, Edge::clamped, true), 7.242, 5e-3);
}

} // namespace
} // namespace bedbow::verification
