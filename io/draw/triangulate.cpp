#include "io/draw/triangulate.h"

#include <cmath>
#include <limits>

namespace bedbow {

namespace {

using Point = Eigen::Vector2d;

double cross(const Point& o, const Point& a, const Point& b) {
  return (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x());
}

/// Twice the area below which three points count as in line.
double tolerance(const std::vector<Point>& points) {
  double size = 0;
  for (const Point& p : points) size = std::max(size, (p - points[0]).squaredNorm());
  return 1e-12 * size;
}

bool between(const Point& a, const Point& b, const Point& p, double eps) {
  return std::abs(cross(a, b, p)) <= eps && (p - a).dot(p - b) < 0;
}

/// Whether segments cross or touch, apart from shared ends.
bool in_the_way(const Point& a, const Point& b, const Point& c, const Point& d, double eps) {
  if (between(a, b, c, eps) || between(a, b, d, eps)) return true;
  if (c == a || c == b || d == a || d == b) return false;
  const auto side = [eps](double v) { return v > eps ? 1 : v < -eps ? -1 : 0; };
  return side(cross(a, b, c)) * side(cross(a, b, d)) < 0 && side(cross(c, d, a)) * side(cross(c, d, b)) < 0;
}

struct Polygon {
  std::vector<Point> points; // of all loops
  std::vector<std::vector<int>> loops;
  double eps = 0;
};

bool free_bridge(const Polygon& polygon, const std::vector<int>& outside, std::size_t first_hole, int a, int b) {
  const auto clear = [&](const std::vector<int>& loop) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Point& c = polygon.points[loop[i]];
      const Point& d = polygon.points[loop[(i + 1) % loop.size()]];
      if (in_the_way(polygon.points[a], polygon.points[b], c, d, polygon.eps)) return false;
    }
    return true;
  };
  if (!clear(outside)) return false;
  for (std::size_t h = first_hole; h < polygon.loops.size(); ++h)
    if (!clear(polygon.loops[h])) return false;
  return true;
}

/// The outside with one hole spliced in through the shortest free bridge.
std::vector<int> joined(const Polygon& polygon, const std::vector<int>& outside, std::size_t h) {
  const std::vector<int>& hole = polygon.loops[h];
  double shortest = std::numeric_limits<double>::infinity();
  std::size_t from = 0, to = 0;
  for (std::size_t i = 0; i < outside.size(); ++i)
    for (std::size_t j = 0; j < hole.size(); ++j) {
      const double length = (polygon.points[outside[i]] - polygon.points[hole[j]]).norm();
      if (length >= shortest || !free_bridge(polygon, outside, h, outside[i], hole[j])) continue;
      shortest = length;
      from = i;
      to = j;
    }
  std::vector<int> out(outside.begin(), outside.begin() + static_cast<std::ptrdiff_t>(from) + 1);
  for (std::size_t j = 0; j <= hole.size(); ++j) out.push_back(hole[(to + j) % hole.size()]);
  out.insert(out.end(), outside.begin() + static_cast<std::ptrdiff_t>(from), outside.end());
  return out;
}

/// Whether the corner at `i` can be cut off: it is convex and no other corner lies in or on the triangle.
bool is_ear(const Polygon& polygon, const std::vector<int>& ring, std::size_t i) {
  const std::size_t n = ring.size();
  const Point& a = polygon.points[ring[(i + n - 1) % n]];
  const Point& b = polygon.points[ring[i]];
  const Point& c = polygon.points[ring[(i + 1) % n]];
  if (cross(a, b, c) <= polygon.eps) return false;
  for (const int k : ring) {
    const Point& p = polygon.points[k];
    if (p == a || p == b || p == c) continue;
    if (cross(a, b, p) >= -polygon.eps && cross(b, c, p) >= -polygon.eps && cross(c, a, p) >= -polygon.eps)
      return false;
  }
  return true;
}

} // namespace

double signed_area(const std::vector<Point>& loop) {
  double twice = 0;
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const Point& a = loop[i];
    const Point& b = loop[(i + 1) % loop.size()];
    twice += a.x() * b.y() - a.y() * b.x();
  }
  return twice / 2;
}

std::vector<std::array<int, 3>> triangulate(const std::vector<std::vector<Point>>& loops) {
  Polygon polygon;
  for (const auto& loop : loops) {
    polygon.loops.emplace_back();
    for (const Point& p : loop) {
      polygon.loops.back().push_back(static_cast<int>(polygon.points.size()));
      polygon.points.push_back(p);
    }
  }
  if (polygon.loops.empty()) return {};
  polygon.eps = tolerance(polygon.points);
  std::vector<int> ring = polygon.loops[0];
  for (std::size_t h = 1; h < polygon.loops.size(); ++h) ring = joined(polygon, ring, h);

  std::vector<std::array<int, 3>> triangles;
  while (ring.size() > 2) {
    std::size_t ear = 0;
    while (ear < ring.size() && !is_ear(polygon, ring, ear)) ++ear;
    if (ear == ring.size()) break; // the outline crosses itself: draw what was cut so far
    const std::size_t n = ring.size();
    triangles.push_back({ring[(ear + n - 1) % n], ring[ear], ring[(ear + 1) % n]});
    ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(ear));
  }
  return triangles;
}

} // namespace bedbow
