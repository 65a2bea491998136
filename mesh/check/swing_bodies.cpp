// Outlines of the swinging and the fixed bodies.
#include "mesh/check/outline.h"
#include "mesh/check/part_keys.h"
#include "mesh/check/swing.h"
#include "mesh/machine/bar_box.h"
#include "mesh/piece/fastener.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

Polygon rectangle(double y0, double y1, double z0, double z1) {
  return {{y0, z0}, {y1, z0}, {y1, z1}, {y0, z1}};
}

void add_bars(const Machine& m, BodyKind kind, SwingBody::Kind as, const Registry<ShapeEntry>& shapes,
              std::vector<SwingBody>& out) {
  for (const Bar& bar : m.body(kind).bars)
    if (Polygon outline = outline_of(bar, shapes); !outline.empty())
      out.push_back({as, to_string(kind) + "." + bar.name, std::move(outline), bar.start, bar.end(), bar.pos});
}

/// The clamp's bar that a joint is attached to; null where there is none.
const Bar* clamp_bar(const Machine& m, const JointBase& j) {
  for (const Ref& r : j.joins)
    if (r.kind == Ref::Kind::bar && r.body == BodyKind::clamp) return &m.bar(r);
  return nullptr;
}

/// Washer, nut and two threads of stud (common practice, no source) on top of the bar that the post pulls down.
void add_nuts(const Machine& m, const Registry<ShapeEntry>& shapes, std::vector<SwingBody>& out) {
  for (std::size_t i = 0; i < m.posts.size(); ++i) {
    const Post& p = m.posts[i];
    const Bar* bar = clamp_bar(m, p);
    const auto box = bar ? bar_box(*bar, shapes) : std::nullopt;
    if (!box || !p.at.head<2>().allFinite() || !(p.diameter > 0)) continue;
    Thread thread;
    thread.d = p.diameter;
    if (const auto known = find_thread(p.thread)) thread = *known;
    const Hardware h = hardware(thread);
    const double corners = h.across_flats / std::numbers::sqrt3; // half the width across corners of a hexagon
    const double top = box->upper.y() + h.washer_thickness + h.nut_height + 2 * thread.pitch;
    const double x = p.at.x(), y = p.at.y();
    out.push_back({SwingBody::Kind::nut, "the nut of " + called(JointKind::post, p.name, i),
                   rectangle(y - corners, y + corners, box->upper.y(), top), x - corners, x + corners, p.pos});
  }
}

/// The eccentric under the bar that it lifts.
void add_cams(const Machine& m, const Registry<ShapeEntry>& shapes, std::vector<SwingBody>& out) {
  constexpr int pieces = 36;
  for (std::size_t i = 0; i < m.cams.size(); ++i) {
    const Cam& c = m.cams[i];
    const Bar* bar = clamp_bar(m, c);
    const auto box = bar ? bar_box(*bar, shapes) : std::nullopt;
    if (!box || !c.at.head<2>().allFinite() || !(c.radius > 0) || !(c.width > 0)) continue;
    Polygon circle;
    for (int k = 0; k < pieces; ++k) {
      const double a = 2 * std::numbers::pi * k / pieces;
      circle.emplace_back(c.at.y() + c.radius * std::cos(a), box->lower.y() - c.radius * (1 - std::sin(a)));
    }
    out.push_back({SwingBody::Kind::cam, called(JointKind::cam, c.name, i), std::move(circle), c.at.x() - c.width / 2,
                   c.at.x() + c.width / 2, c.pos});
  }
}

void add_fingers(const Machine& m, std::vector<SwingBody>& out) {
  const Fingers& f = *m.fingers;
  const double t = m.sheet->thickness, y = m.nose.setback;
  if (!std::isfinite(y + f.reach + f.thickness + t)) return;
  for (std::size_t i = 0; i < f.widths.size(); ++i) {
    const Polygon outline = rectangle(y, y + f.reach, t, t + f.thickness);
    out.push_back({SwingBody::Kind::finger, "finger " + std::to_string(i + 1),
                   rounded_corner(outline, {y, t}, m.nose.radius), f.starts[i], f.starts[i] + f.widths[i], f.pos});
  }
}

/// How far the clamp has to be raised for the bar that carries the nose to lie on the sheet [m].
double raised_by(const Machine& m, const Registry<ShapeEntry>& shapes) {
  const Body& clamp = m.body(BodyKind::clamp);
  if (m.nose.bar < 0 || m.fingers) return 0;
  const auto box = bar_box(clamp.bars[static_cast<std::size_t>(m.nose.bar)], shapes);
  return box ? std::fmax(0, m.sheet->thickness - box->lower.y()) : 0;
}

} // namespace

std::vector<SwingBody> swinging_bodies(const Machine& m, const Registry<ShapeEntry>& shapes) {
  std::vector<SwingBody> out;
  if (!m.sheet) return out;
  const Sheet& s = *m.sheet;
  if (std::isfinite(s.thickness + s.inside_radius + s.flange + s.width + s.centre))
    out.push_back({SwingBody::Kind::flange, "the flange", {}, s.left(), s.right(), s.pos});
  add_bars(m, BodyKind::apron, SwingBody::Kind::apron, shapes, out);
  return out;
}

std::vector<SwingBody> standing_bodies(const Machine& m, const Registry<ShapeEntry>& shapes) {
  std::vector<SwingBody> out;
  if (!m.sheet) return out;
  std::vector<SwingBody> above;
  add_bars(m, BodyKind::clamp, SwingBody::Kind::clamp, shapes, above);
  for (SwingBody& body : above)
    if (m.nose.bar >= 0 && !m.fingers &&
        body.name == "clamp." + m.body(BodyKind::clamp).bars[static_cast<std::size_t>(m.nose.bar)].name)
      body.outline = rounded_corner(body.outline, {m.nose.setback, m.sheet->thickness}, m.nose.radius);
  add_nuts(m, shapes, above);
  const double raise = raised_by(m, shapes);
  for (SwingBody& body : above)
    for (Eigen::Vector2d& p : body.outline) p.y() += raise;
  add_bars(m, BodyKind::bed, SwingBody::Kind::bed, shapes, out);
  out.insert(out.end(), above.begin(), above.end());
  add_cams(m, shapes, out);
  if (m.fingers) add_fingers(m, out);
  return out;
}

} // namespace bedbow
