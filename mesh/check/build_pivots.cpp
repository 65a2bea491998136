// Cams behind the posts and on their bars, hinges on the bend line beside the sheet.
#include "mesh/check/drawing.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Its line of contact must lie on the clamp's bar, and something must carry its shaft.
void check_cam_on_bars(Drawing& d, const Cam& c, const Upright& at, const Fault& head) {
  const double half = c.width > 0 ? c.width / 2 : 0;
  for (const DrawnBar* b : d.joined(c)) {
    Fault f = head;
    f.kind = FaultKind::off_bar;
    f.other = b->name;
    f.value = std::max({b->bar->start - (at.x - half), at.x + half - b->bar->end(), b->box.lower.x() - at.y,
                        at.y - b->box.upper.x(), 0.0});
    if (f.value > drawing_slack) d.add(f);
  }
}

/// The clamp is a lever about its posts: nose, post, cam.
void check_cam_order(Drawing& d, const Upright& at, Fault head) {
  const Machine& m = d.machine;
  double nearest = HUGE_VAL;
  for (std::size_t i = 0; i < m.posts.size(); ++i) {
    const auto post = d.place(m.posts[i]);
    if (!post || !(std::abs(post->x - at.x) < nearest)) continue;
    nearest = std::abs(post->x - at.x);
    head.other = called(JointKind::post, m.posts[i].name, i);
    head.value = at.y - post->y;
  }
  head.kind = FaultKind::cam_before_post;
  if (nearest < HUGE_VAL && head.value <= drawing_slack) d.add(head);
}

/// Bars in which the eccentric turns that it does not join.
void check_cam_passage(Drawing& d, const Cam& c, const Upright& at, Fault head) {
  const auto bars = d.joined(c);
  if (bars.empty() || !(c.radius > 0) || !(c.width > 0)) return;
  const double top = bars.back()->box.lower.y();
  head.kind = FaultKind::pierces;
  for (const DrawnBar& b : d.bars) {
    if (std::ranges::find(bars, &b) != bars.end() ||
        miss(b.bar->start, b.bar->end(), at.x - c.width / 2, at.x + c.width / 2) > -drawing_slack)
      continue;
    const double depth = c.radius - b.box.distance({at.y, top - c.radius});
    if (depth <= drawing_slack) continue;
    head.other = b.name;
    head.value = depth;
    d.add(head);
  }
}

void check_hinge(Drawing& d, const Hinge& h, Fault f) {
  const double off = std::hypot(std::isfinite(h.at.y()) ? h.at.y() : 0, std::isfinite(h.at.z()) ? h.at.z() : 0);
  if (off > drawing_slack) {
    f.kind = FaultKind::hinge_off_line;
    f.value = off;
    d.add(f);
  }
  if (!d.machine.sheet || !(h.pin > 0) || !std::isfinite(h.at.x())) return;
  const double half = h.bearing_length > 0 ? h.bearing_length / 2 : 0;
  const double in = -miss(h.at.x() - half, h.at.x() + half, d.machine.sheet->left(), d.machine.sheet->right());
  if (!(in > drawing_slack)) return;
  f.kind = FaultKind::in_sheet;
  f.other = "the sheet";
  f.value = in;
  d.add(f);
}

} // namespace

void check_cams_and_hinges(Drawing& d) {
  const Machine& m = d.machine;
  const auto head = [](JointKind kind, const JointBase& j, std::size_t i) {
    Fault f;
    f.part = called(kind, j.name, i);
    f.key = joint_key(info(kind).key, j.name, i);
    f.pos = j.pos;
    f.x = j.at.x();
    return f;
  };
  for (std::size_t i = 0; i < m.cams.size(); ++i) {
    const auto at = d.place(m.cams[i]);
    if (!at) continue;
    const Fault f = head(JointKind::cam, m.cams[i], i);
    check_cam_on_bars(d, m.cams[i], *at, f);
    check_cam_order(d, *at, f);
    check_cam_passage(d, m.cams[i], *at, f);
  }
  for (std::size_t i = 0; i < m.hinges.size(); ++i) check_hinge(d, m.hinges[i], head(JointKind::hinge, m.hinges[i], i));
}

} // namespace bedbow
