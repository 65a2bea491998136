// Bars that should touch and don't, and bars in one place.
#include "mesh/check/drawing.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// By how much the boxes of two sections miss each other; 0 where they touch. A box is never smaller than its bar.
double gap_between(const BarBox& a, const BarBox& b) {
  const Eigen::Vector2d gap = a.lower.cwiseMax(b.lower) - a.upper.cwiseMin(b.upper);
  return gap.cwiseMax(0).norm();
}

void check_touch(Drawing& d, const JointBase& joint) {
  const DrawnBar *one = d.find(joint.joins[0]), *other = d.find(joint.joins[1]);
  if (!one || !other || one == other) return;
  const double gap = gap_between(one->box, other->box);
  if (gap <= drawing_slack) return;
  d.add({FaultKind::gap, false, one->name, other->name, gap, 0, Quantity::length, left_out, one->bar->pos,
         bar_key(one->ref.body, *one->bar)});
}

/// Whether one bar lies in the bore of another.
bool in_bore(const DrawnBar& tube, const DrawnBar& in) {
  const double wall = tube.bar->shape.wall;
  if (tube.bar->shape.kind != "tube" || !(wall > 0)) return false;
  const Eigen::Vector2d w = Eigen::Vector2d::Constant(wall - drawing_slack);
  return ((in.box.lower - tube.box.lower - w).array() >= 0).all() &&
         ((tube.box.upper - w - in.box.upper).array() >= 0).all();
}

double overlap_depth(const DrawnBar& a, const DrawnBar& b) {
  const Eigen::Vector2d across = a.box.upper.cwiseMin(b.box.upper) - a.box.lower.cwiseMax(b.box.lower);
  if (across.minCoeff() <= drawing_slack || in_bore(a, b) || in_bore(b, a)) return 0;
  return a.block && b.block ? across.minCoeff() : overlap_of(a.outline, b.outline).depth;
}

void check_overlap(Drawing& d, const DrawnBar& a, const DrawnBar& b) {
  if (miss(a.bar->start, a.bar->end(), b.bar->start, b.bar->end()) >= -drawing_slack) return;
  const double depth = overlap_depth(a, b);
  if (depth <= drawing_slack) return;
  d.add({FaultKind::overlap, false, a.name, b.name, depth, 0, Quantity::length, left_out, a.bar->pos,
         bar_key(a.ref.body, *a.bar)});
}

} // namespace

void check_bars(Drawing& d) {
  for (const Screws& s : d.machine.screws) check_touch(d, s);
  for (const Weld& w : d.machine.welds) check_touch(d, w);
  for (std::size_t i = 0; i < d.bars.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) check_overlap(d, d.bars[i], d.bars[j]);
}

} // namespace bedbow
