// Requirements of a section shape.
#include "solver/conformance/conformance.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

/// Curves are drawn as polygons (48 corners: 0.6 % of second moments), thin walls may be taken on their middle lines.
constexpr double outline_error = 0.01;
constexpr double rounding = 1e-9;

/// Power of the length with which a property scales.
int power_of(const std::string& key) {
  if (key == "A" || key == "Ay" || key == "Az") return 2;
  if (key == "Iyy" || key == "Izz" || key == "Iyz" || key == "J") return 4;
  return key == "Wt" ? 3 : 1;
}

/// The example, in a scale.
Shape sample(const ShapeEntry& e, double scale) {
  Shape out;
  out.kind = e.name;
  for (std::size_t i = 0; i < e.sizes.size(); ++i) {
    const std::string& key = e.sizes[i];
    const double value = e.examples.at(i) * std::pow(scale, power_of(key));
    if (key == "width")
      out.width = value;
    else if (key == "height")
      out.height = value;
    else if (key == "diameter")
      out.diameter = value;
    else if (key == "wall")
      out.wall = value;
    else
      out.given[key] = value;
  }
  return out;
}

/// Integrals over the area within the outline, by Green's theorem.
struct Integrals {
  double A = 0, y = 0, z = 0, yy = 0, zz = 0, yz = 0;
};

Integrals integrals_of(const Outline& outline) {
  Integrals s;
  for (std::size_t l = 0; l < outline.size(); ++l) {
    Integrals loop;
    const auto& c = outline[l];
    for (std::size_t i = 0; i < c.size(); ++i) {
      const Eigen::Vector2d &a = c[i], &b = c[(i + 1) % c.size()];
      const double w = a.x() * b.y() - b.x() * a.y();
      loop.A += w / 2;
      loop.y += w * (a.x() + b.x()) / 6;
      loop.z += w * (a.y() + b.y()) / 6;
      loop.yy += w * (a.x() * a.x() + a.x() * b.x() + b.x() * b.x()) / 12;
      loop.zz += w * (a.y() * a.y() + a.y() * b.y() + b.y() * b.y()) / 12;
      loop.yz += w * (a.x() * b.y() + 2 * a.x() * a.y() + 2 * b.x() * b.y() + b.x() * a.y()) / 24;
    }
    const double sign = (l == 0 ? 1 : -1) * (loop.A < 0 ? -1 : 1); // a hole may run either way
    s.A += sign * loop.A;
    s.y += sign * loop.y;
    s.z += sign * loop.z;
    s.yy += sign * loop.yy;
    s.zz += sign * loop.zz;
    s.yz += sign * loop.yz;
  }
  return s;
}

double off(double value, double due) {
  return std::abs(value / due - 1);
}

void check_outline(const Section& s, Conformance& out) {
  const SectionProperties& p = s.props;
  const Integrals i = integrals_of(s.outline);
  const double size = std::sqrt(p.A);
  out.at_most("area against its outline", off(p.A, i.A), outline_error);
  out.at_most("centroid at the origin, over sqrt(A)", std::hypot(i.y, i.z) / i.A / size, outline_error);
  out.at_most("Iyy, Izz against the outline", std::max(off(p.Iyy, i.zz), off(p.Izz, i.yy)), outline_error);
  out.at_most("Iyz against the outline, over sqrt(Iyy Izz)", std::abs(p.Iyz - i.yz) / std::sqrt(p.Iyy * p.Izz),
              outline_error);
}

void check_bounds(const Section& s, Conformance& out) {
  const SectionProperties& p = s.props;
  out.at_most("J below Iyy + Izz: ratio", p.J / (p.Iyy + p.Izz), 1 + rounding);
  if (s.outline.size() == 1)
    out.at_most("J of a solid section below A^2 / 2 pi: ratio", p.J / (p.A * p.A / (2 * std::numbers::pi)),
                1 + rounding);
  out.at_most("shear areas within the area: ratio", std::max(p.Ay, p.Az) / p.A, 1);
  out.at_most("Iyz^2 below Iyy Izz: ratio", p.Iyz * p.Iyz / (p.Iyy * p.Izz), 1 - rounding);
}

/// Stress is greatest at the extremes of a section: the points must reach these, but not beyond.
void check_points(const Section& s, Conformance& out) {
  Eigen::Vector2d low = Eigen::Vector2d::Constant(INFINITY), high = -low;
  for (const StressPoint& q : s.points) {
    low = low.cwiseMin(Eigen::Vector2d(q.y, q.z));
    high = high.cwiseMax(Eigen::Vector2d(q.y, q.z));
  }
  const Eigen::Vector2d reach = s.props.upper - s.props.lower;
  const double miss = std::max((low - s.props.lower).cwiseAbs().cwiseQuotient(reach).maxCoeff(),
                               (high - s.props.upper).cwiseAbs().cwiseQuotient(reach).maxCoeff());
  out.at_most("extreme points reach the outline's box", miss, outline_error);
}

/// Twice the sizes: constants scale by their powers of two.
void check_scale(const Section& one, const Section& two, Conformance& out) {
  const SectionProperties &p = one.props, &q = two.props;
  double error = 0;
  for (const auto& [a, b] : {std::pair{p.A, q.A}, {p.Ay, q.Ay}, {p.Az, q.Az}}) error = std::max(error, off(b, 4 * a));
  for (const auto& [a, b] : {std::pair{p.Iyy, q.Iyy}, {p.Izz, q.Izz}, {p.J, q.J}})
    error = std::max(error, off(b, 16 * a));
  error = std::max(error, (q.shear_centre - 2 * p.shear_centre).norm() / std::sqrt(q.A));
  out.at_most("twice the sizes: A x 4, I and J x 16", error, rounding);
}

} // namespace

Conformance check_shape(const ShapeEntry& e) {
  Conformance out;
  if (e.examples.size() != e.sizes.size()) {
    out.failed("an example of each size", std::to_string(e.examples.size()) + " for " + std::to_string(e.sizes.size()));
    return out;
  }
  const Section s = e.make(sample(e, 1), 0.3);
  check_outline(s, out);
  check_bounds(s, out);
  check_points(s, out);
  check_scale(s, e.make(sample(e, 2), 0.3), out);
  return out;
}

} // namespace bedbow
