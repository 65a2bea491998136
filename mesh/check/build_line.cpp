// What meets at the bend line: bed, sheet, nose and face; set-back and swing.
#include "mesh/check/drawing.h"
#include "mesh/check/swing.h"
#include "mesh/machine/setback.h"

#include <cmath>

namespace bedbow {

namespace {

const DrawnBar* line_bar(const Drawing& d, BodyKind kind) {
  const int edge = d.machine.body(kind).edge_bar;
  return edge >= 0 ? d.find({Ref::Kind::bar, kind, edge}) : nullptr;
}

Fault of_bar(FaultKind kind, const DrawnBar& b, double value, double limit = 0, std::string other = "") {
  return {kind,
          false,
          b.name,
          std::move(other),
          value,
          limit,
          Quantity::length,
          left_out,
          b.bar->pos,
          bar_key(b.ref.body, *b.bar)};
}

void check_bed_edge(Drawing& d) {
  const DrawnBar* bed = line_bar(d, BodyKind::bed);
  if (!bed) return;
  // Of a block the front top corner, of any other shape its nearest place.
  const double off = bed->block ? std::hypot(bed->box.lower.x(), bed->box.upper.y()) : reach_of(bed->outline).least;
  if (off > drawing_slack) d.add(of_bar(FaultKind::edge_off_line, *bed, off));
}

void check_face(Drawing& d) {
  const DrawnBar* face = line_bar(d, BodyKind::apron);
  if (!face) return;
  const double reach = -face->box.lower.x();
  if (reach < d.machine.sheet->flange - drawing_slack)
    d.add(of_bar(FaultKind::flange_off_face, *face, reach, d.machine.sheet->flange, "the flange"));
  if (face->block && std::abs(face->box.upper.y()) > drawing_slack)
    d.add(of_bar(FaultKind::face_off_line, *face, face->box.upper.y()));
}

void check_nose(Drawing& d) {
  const Machine& m = d.machine;
  const Nose& nose = m.nose;
  if (m.fingers || nose.bar < 0) return; // fingers reach the sheet by their own thickness
  const DrawnBar* bar = d.find({Ref::Kind::bar, BodyKind::clamp, nose.bar});
  if (!bar) return;
  // Drawn for a thinner sheet it is raised; what is above the sheet is let down by hand, but is not where it is drawn.
  const double air = bar->box.lower.y() - m.sheet->thickness;
  if (air > drawing_slack) {
    Fault f = of_bar(FaultKind::nose_off_sheet, *bar, air, 0, "the sheet");
    f.tight = true;
    d.add(f);
  }
  const double off = std::max(bar->box.lower.x() - nose.setback, nose.setback + nose.land - bar->box.upper.x());
  if (off > drawing_slack) {
    Fault f = of_bar(FaultKind::nose_off_bar, *bar, off, 0, "the nose");
    f.tight = true; // a strip may carry it that is not drawn
    d.add(f);
  }
}

void check_posts_in_sheet(Drawing& d) {
  const Machine& m = d.machine;
  for (std::size_t i = 0; i < m.posts.size(); ++i) {
    const Post& p = m.posts[i];
    const auto at = d.place(p);
    if (!at || !(p.diameter > 0)) continue;
    const double r = p.diameter / 2, needs = m.nose.setback + m.nose.land;
    if (miss(at->x - r, at->x + r, m.sheet->left(), m.sheet->right()) > -drawing_slack || at->y - r >= needs) continue;
    d.add({FaultKind::in_sheet, false, called(JointKind::post, p.name, i), "the sheet", at->y - r, needs,
           Quantity::length, at->x, p.pos, joint_key("post", p.name, i)});
  }
}

} // namespace

void check_line(Drawing& d, const Springback& springback) {
  const Machine& m = d.machine;
  if (!m.sheet) return;
  check_bed_edge(d);
  check_face(d);
  check_nose(d);
  check_posts_in_sheet(d);
  if (!std::isfinite(m.sheet->angle)) return;
  if (const double least = required_setback(m, springback.arc); m.nose.bar >= 0 && m.nose.setback < least - 1e-6)
    d.add({FaultKind::setback, false, "the nose", "the flange", m.nose.setback, least, Quantity::length, left_out,
           m.nose.pos, "clamp.nose.setback"});
  const double bend = swing_angles(m, springback).bend;
  for (const SwingClash& c : swing_clashes(m, d.shapes, springback))
    d.add({FaultKind::swing, c.meeting.angle > bend, c.mover.name, c.obstacle.name, c.meeting.angle, c.angle,
           Quantity::angle, c.meeting.at.x(), c.obstacle.pos, c.obstacle.name});
}

} // namespace bedbow
