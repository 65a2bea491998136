#include "mesh/piece/shape/check.h"
#include "mesh/piece/shapes.h"

#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

using std::numbers::pi;

// Bending may point anywhere: 24 points round the rim are at most 1 - cos(7.5 deg) = 0.9 % short of the worst.
constexpr int rim_points = 24;
constexpr int outline_points = 48;

std::vector<Eigen::Vector2d> circle(double radius) {
  std::vector<Eigen::Vector2d> out;
  for (int i = 0; i < outline_points; ++i)
    out.emplace_back(radius * std::cos(2 * pi * i / outline_points), radius * std::sin(2 * pi * i / outline_points));
  return out;
}

// On the rim shear runs along the tangent; V Q / I t gives its part along V, so the whole is peak * cos(angle from the
// neutral axis).
std::vector<StressPoint> rim(double radius, double peak, double J) {
  std::vector<StressPoint> out;
  for (int i = 0; i < rim_points; ++i) {
    const double phi = 2 * pi * i / rim_points;
    const Eigen::Vector2d tangent(-std::sin(phi), std::cos(phi));
    StressPoint p;
    p.y = radius * std::cos(phi);
    p.z = radius * std::sin(phi);
    p.tau_Vy = -peak * std::sin(phi) * tangent;
    p.tau_Vz = peak * std::cos(phi) * tangent;
    p.tau_T = radius / J * tangent;
    out.push_back(p);
  }
  return out;
}

// Ring between radii r (0: solid) and R.
Section ring(double R, double r, double kappa) {
  Section out;
  SectionProperties& p = out.props;
  p.A = pi * (R * R - r * r);
  p.Iyy = p.Izz = pi / 4 * (std::pow(R, 4) - std::pow(r, 4));
  p.J = 2 * p.Iyy;
  p.Ay = p.Az = kappa * p.A;
  p.lower = {-R, -R};
  p.upper = {R, R};
  // V Q / I t on the neutral axis: Q = 2 (R^3 - r^3)/3, t = 2 (R - r).
  const double peak = (R * R + R * r + r * r) / (3 * p.Iyy);
  out.points = rim(R, peak, p.J);
  out.outline = {circle(R)};
  if (r == 0) {
    StressPoint centre;
    centre.tau_Vy.x() = centre.tau_Vz.y() = peak;
    out.points.push_back(centre);
  } else {
    out.outline.push_back(circle(r));
  }
  return out;
}

} // namespace

Section round_section(const Shape& shape, double nu) {
  require_size(shape, "diameter", shape.diameter);
  return ring(shape.diameter / 2, 0, 6 * (1 + nu) / (7 + 6 * nu)); // Cowper 1966
}

Section pipe_section(const Shape& shape, double nu) {
  require_size(shape, "diameter", shape.diameter);
  require_wall(shape, shape.diameter / 2, "half of the diameter");
  const double R = shape.diameter / 2, r = R - shape.wall;
  const double m = r / R, q = (1 + m * m) * (1 + m * m);
  const double kappa = 6 * (1 + nu) * q / ((7 + 6 * nu) * q + (20 + 12 * nu) * m * m); // Cowper 1966
  return ring(R, r, kappa);
}

} // namespace bedbow
