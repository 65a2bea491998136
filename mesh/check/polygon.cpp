#include "mesh/check/polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

using Point = Eigen::Vector2d;

double cross(const Point& a, const Point& b) {
  return a.x() * b.y() - a.y() * b.x();
}

double distance_to_edge(const Point& from, const Point& to, const Point& point) {
  const Point along = to - from;
  const double length2 = along.squaredNorm();
  const double t = length2 > 0 ? std::clamp(along.dot(point - from) / length2, 0.0, 1.0) : 0;
  return (from + t * along - point).norm();
}

double distance_to_boundary(const Polygon& polygon, const Point& point) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < polygon.size(); ++i)
    least = std::min(least, distance_to_edge(polygon[i], polygon[(i + 1) % polygon.size()], point));
  return least;
}

/// Even-odd rule.
bool inside(const Polygon& polygon, const Point& point) {
  bool in = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    if ((a.y() > point.y()) == (b.y() > point.y())) continue;
    if (point.x() < a.x() + (b.x() - a.x()) * (point.y() - a.y()) / (b.y() - a.y())) in = !in;
  }
  return in;
}

/// Where along the edge from `a` to `b`, 0 to 1, the polygon's boundary crosses it; with both ends, ascending.
std::vector<double> cuts(const Point& a, const Point& b, const Polygon& polygon) {
  std::vector<double> out{0, 1};
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point &c = polygon[i], &d = polygon[(i + 1) % polygon.size()];
    const double parallel = cross(b - a, d - c);
    if (parallel == 0) continue;
    const double t = cross(c - a, d - c) / parallel, u = cross(c - a, b - a) / parallel;
    if (t > 0 && t < 1 && u >= 0 && u <= 1) out.push_back(t);
  }
  std::ranges::sort(out);
  return out;
}

void deepen(Overlap& deepest, const Polygon& edges_of, const Polygon& in) {
  const auto look = [&](const Point& point) {
    if (const double depth = depth_inside(in, point); depth > deepest.depth) deepest = {depth, point};
  };
  for (std::size_t i = 0; i < edges_of.size(); ++i) {
    const Point &a = edges_of[i], &b = edges_of[(i + 1) % edges_of.size()];
    look(a);
    const std::vector<double> at = cuts(a, b, in);
    for (std::size_t k = 1; k < at.size(); ++k) look(a + (at[k - 1] + at[k]) / 2 * (b - a));
  }
}

} // namespace

double depth_inside(const Polygon& polygon, const Point& point) {
  return inside(polygon, point) ? distance_to_boundary(polygon, point) : 0;
}

Overlap overlap_of(const Polygon& a, const Polygon& b) {
  Overlap deepest;
  deepen(deepest, a, b);
  deepen(deepest, b, a);
  return deepest;
}

double box_overlap(const Polygon& a, const Polygon& b) {
  constexpr double far = std::numeric_limits<double>::infinity();
  Point low = Point::Constant(-far), high = Point::Constant(far);
  for (const Polygon* polygon : {&a, &b}) {
    Point lower = Point::Constant(far), upper = Point::Constant(-far);
    for (const Point& p : *polygon) {
      lower = lower.cwiseMin(p);
      upper = upper.cwiseMax(p);
    }
    low = low.cwiseMax(lower);
    high = high.cwiseMin(upper);
  }
  return (high - low).minCoeff();
}

Reach reach_of(const Polygon& polygon) {
  const Point origin(0, 0);
  Reach out{inside(polygon, origin) ? 0 : distance_to_boundary(polygon, origin), 0};
  for (const Point& p : polygon) out.greatest = std::max(out.greatest, p.norm());
  return out;
}

Polygon swung(const Polygon& polygon, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  Polygon out;
  out.reserve(polygon.size());
  for (const Point& p : polygon) out.emplace_back(c * p.x() + s * p.y(), c * p.y() - s * p.x());
  return out;
}

Polygon rounded_corner(const Polygon& polygon, const Point& near, double radius) {
  if (polygon.size() < 3 || !(radius > 0)) return polygon;
  constexpr int pieces = 24;
  const auto nearest = std::ranges::min_element(polygon, {}, [&](const Point& p) { return (p - near).squaredNorm(); });
  const auto k = static_cast<std::size_t>(nearest - polygon.begin());
  const Point corner = *nearest;
  const Point before = polygon[(k + polygon.size() - 1) % polygon.size()] - corner;
  const Point after = polygon[(k + 1) % polygon.size()] - corner;
  const Point one = before.normalized(), other = after.normalized();
  const double half = std::acos(std::clamp(one.dot(other), -1.0, 1.0)) / 2;
  if (!(half > 0) || half > 1.57) return polygon; // folded back, or no corner at all
  const double tangent = std::min(radius / std::tan(half), std::min(before.norm(), after.norm()) / 2);
  const double r = tangent * std::tan(half);
  const Point centre = corner + (one + other).normalized() * (r / std::sin(half));
  const Point from = corner + tangent * one - centre, to = corner + tangent * other - centre;
  const double turn = std::atan2(cross(from, to), from.dot(to));
  Polygon out(polygon.begin(), nearest);
  for (int i = 0; i <= pieces; ++i) {
    const double a = turn * i / pieces;
    out.emplace_back(centre.x() + from.x() * std::cos(a) - from.y() * std::sin(a),
                     centre.y() + from.x() * std::sin(a) + from.y() * std::cos(a));
  }
  out.insert(out.end(), nearest + 1, polygon.end());
  return out;
}

} // namespace bedbow
