#include "mesh/check/drawing.h"

#include "mesh/machine/joint_place.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// The part of a polygon above a height (sign = 1) or below it (-1). Source: Sutherland & Hodgman 1974.
Polygon cut_at(const Polygon& p, double height, double sign) {
  Polygon out;
  const auto beyond = [&](const Eigen::Vector2d& v) { return sign * (v.y() - height); };
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Eigen::Vector2d &a = p[i], &b = p[(i + 1) % p.size()];
    if (beyond(a) >= 0) out.push_back(a);
    if ((beyond(a) > 0 && beyond(b) < 0) || (beyond(a) < 0 && beyond(b) > 0))
      out.push_back(a + beyond(a) / (beyond(a) - beyond(b)) * (b - a));
  }
  return out;
}

} // namespace

double Upright::distance(const Upright& other) const {
  return std::hypot(x - other.x, y - other.y);
}

double miss(double from, double to, double other_from, double other_to) {
  return std::max(from, other_from) - std::min(to, other_to);
}

std::optional<std::pair<double, double>> extent_between(const Polygon& outline, double low, double high) {
  const Polygon part = cut_at(cut_at(outline, low, 1), high, -1);
  if (part.size() < 3) return std::nullopt;
  const auto [least, most] = std::ranges::minmax_element(part, {}, [](const Eigen::Vector2d& v) { return v.x(); });
  return std::pair(least->x(), most->x());
}

const DrawnBar* Drawing::find(const Ref& ref) const {
  const auto it = std::ranges::find(bars, ref, &DrawnBar::ref);
  return ref.kind == Ref::Kind::bar && it != bars.end() ? &*it : nullptr;
}

std::vector<const DrawnBar*> Drawing::joined(const JointBase& joint) const {
  std::vector<const DrawnBar*> out;
  for (const Ref& r : joint.joins)
    if (const DrawnBar* b = find(r)) out.push_back(b);
  std::ranges::stable_sort(out, {}, [](const DrawnBar* b) { return b->box.lower.y() + b->box.upper.y(); });
  return out;
}

Eigen::Vector3d Drawing::whole_place(const JointBase& joint) const {
  SideBoxes boxes;
  for (std::size_t i = 0; i < 2; ++i)
    if (const DrawnBar* b = find(joint.joins[i])) boxes[i] = b->box;
  return complete_place(machine, joint.joins, boxes, joint.at);
}

std::optional<Upright> Drawing::place(const JointBase& joint) const {
  if (joined(joint).empty()) return std::nullopt;
  const Eigen::Vector3d at = whole_place(joint);
  return Upright{at.x(), at.y()};
}

Drawing drawing_of(const Machine& machine, const Registry<ShapeEntry>& shapes) {
  Drawing d{machine, shapes, {}, {}};
  for (const Body& body : machine.bodies)
    for (std::size_t i = 0; i < body.bars.size(); ++i) {
      const Bar& bar = body.bars[i];
      Polygon outline = outline_of(bar, shapes);
      if (outline.empty() || !std::isfinite(bar.start + bar.length)) continue;
      BarBox box{outline.front(), outline.front()};
      for (const Eigen::Vector2d& p : outline) {
        box.lower = box.lower.cwiseMin(p);
        box.upper = box.upper.cwiseMax(p);
      }
      const Ref ref{Ref::Kind::bar, body.kind, static_cast<int>(i)};
      d.bars.push_back({ref, &bar, machine.name_of(ref), std::move(outline), box, is_block(bar.shape)});
    }
  return d;
}

} // namespace bedbow
