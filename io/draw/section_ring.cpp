#include "io/draw/section_ring.h"

#include "io/draw/triangulate.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

using Loop = std::vector<Eigen::Vector2d>;

/// Loops with the material on the left: outside counter-clockwise, holes clockwise.
Outline oriented(Outline outline) {
  for (std::size_t i = 0; i < outline.size(); ++i)
    if ((signed_area(outline[i]) > 0) != (i == 0)) std::reverse(outline[i].begin(), outline[i].end());
  return outline;
}

Outline drawn_outline(const Section& section) {
  if (!section.outline.empty()) return oriented(section.outline);
  Eigen::Vector2d lower = section.props.lower, upper = section.props.upper;
  if (!((upper - lower).minCoeff() > 0)) {
    const double half = std::sqrt(section.props.A) / 2;
    lower = {-half, -half};
    upper = {half, half};
  }
  return {{lower, {upper.x(), lower.y()}, upper, {lower.x(), upper.y()}}};
}

/// Splits edges so that a stress that falls to zero and rises again along one is visible. Short edges, such as those of
/// a circle, are kept.
Loop refined(const Loop& loop, double size) {
  Loop out;
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const Eigen::Vector2d& a = loop[i];
    const Eigen::Vector2d& b = loop[(i + 1) % loop.size()];
    const double length = (b - a).norm();
    const int pieces = length < size / 8 ? 1 : std::max(2, static_cast<int>(std::ceil(length / (size / 4) - 1e-9)));
    for (int k = 0; k < pieces; ++k) out.push_back(a + (b - a) * k / pieces);
  }
  return out;
}

/// A stress point anywhere, its shear factors blended from the two nearest of the section by inverse distance.
StressPoint blended(const Section& section, const Eigen::Vector2d& at) {
  StressPoint out;
  out.y = at.x();
  out.z = at.y();
  std::array<const StressPoint*, 2> near{};
  std::array<double, 2> distance{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  for (const StressPoint& p : section.points) {
    const double d = std::hypot(p.y - out.y, p.z - out.z);
    if (d < distance[0]) {
      near[1] = near[0];
      distance[1] = distance[0];
      near[0] = &p;
      distance[0] = d;
    } else if (d < distance[1]) {
      near[1] = &p;
      distance[1] = d;
    }
  }
  if (near[0] == nullptr) return out;
  const double share = near[1] == nullptr ? 0 : distance[0] / std::max(distance[0] + distance[1], 1e-300);
  const StressPoint& other = near[1] == nullptr ? *near[0] : *near[1];
  out.tau_Vy = (1 - share) * near[0]->tau_Vy + share * other.tau_Vy;
  out.tau_Vz = (1 - share) * near[0]->tau_Vz + share * other.tau_Vz;
  out.tau_T = (1 - share) * near[0]->tau_T + share * other.tau_T;
  return out;
}

} // namespace

SectionRing section_ring(const Section& section) {
  Outline outline = drawn_outline(section);
  Eigen::Vector2d low = outline[0][0], high = low;
  for (const Eigen::Vector2d& p : outline[0]) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
  SectionRing ring;
  for (Loop& loop : outline) {
    loop = refined(loop, (high - low).maxCoeff());
    const int first = static_cast<int>(ring.points.size());
    const int count = static_cast<int>(loop.size());
    for (int i = 0; i < count; ++i) {
      ring.points.push_back(blended(section, loop[static_cast<std::size_t>(i)]));
      ring.edges.push_back({first + i, first + (i + 1) % count});
    }
  }
  ring.triangles = triangulate(outline);
  return ring;
}

double RingStress::von_mises() const {
  return std::sqrt(sigma * sigma + 3 * tau * tau);
}

std::array<double, 2> RingStress::principal() const {
  const double radius = std::hypot(sigma / 2, tau);
  return {sigma / 2 + radius, sigma / 2 - radius};
}

RingStress ring_stress(const SectionProperties& properties, const StressPoint& point, const SectionForces& forces) {
  return {direct_stress(properties, forces, point.y, point.z), shear_stress(point, forces).norm()};
}

} // namespace bedbow
