// What a stud passes through, and room for its nuts and the spanner on them.
#include "mesh/check/drawing.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace bedbow {

namespace {

/// Least distance from the axis to a wall on one side, over the width across flats: an open-ended spanner with jaws a
/// third of that thick that reach two fifths past the axis, its head set at 15 degrees and turned over after each
/// swing of 30. Common practice, no source.
constexpr double open_spanner = 0.62;
/// Likewise between two walls, where the handle has no room to swing: the outside of a socket.
constexpr double socket = 0.7;
/// Walls further than this on the other side leave a spanner its swing, over the width across flats.
constexpr double swing_room = 3;

/// A stud with its nuts. Lengths [m].
struct Stud {
  std::size_t index = 0;
  const Post* post = nullptr;
  std::string part, key;
  Upright at;
  Hardware size;
  double washer = 0;                         ///< radius that turns or lies on the bar
  double bottom = 0, top = 0;                ///< faces under its nuts, or the lowest thread
  double pitch = 0;                          ///< of the thread
  bool upper_nut = false, lower_nut = false; ///< whose seat the drawing tells
  const DrawnBar *lower = nullptr, *upper = nullptr;
  /// Washer, nut and two threads of stud (common practice, no source).
  [[nodiscard]] double nut_height() const { return size.washer_thickness + size.nut_height + 2 * pitch; }
};

std::optional<Stud> stud_of(const Drawing& d, std::size_t i) {
  const Post& p = d.machine.posts[i];
  const auto bars = d.joined(p);
  const auto at = d.place(p);
  if (bars.size() < 2 || !at || !(p.diameter > 0)) return std::nullopt;
  const Thread thread = thread_of_size(p.thread, p.diameter);
  Stud s{i, &p, called(JointKind::post, p.name, i), joint_key("post", p.name, i), *at, hardware(thread)};
  s.lower = bars.front();
  s.upper = bars.back();
  s.pitch = thread.pitch;
  const double washer = std::isfinite(p.washer_diameter) ? p.washer_diameter : s.size.washer_diameter;
  s.washer = std::max(s.size.across_flats / std::numbers::sqrt3, p.nut == NutSeat::plain ? 0 : washer / 2);
  const bool tapped = std::isfinite(p.tapped);
  s.top = s.upper->box.upper.y();
  // In a hollow section the lower nut may sit inside, under its upper wall.
  const bool solid = s.lower->bar->shape.kind == "rectangle" && s.lower->block;
  s.bottom = tapped ? s.lower->box.upper.y() - p.tapped : solid ? s.lower->box.lower.y() : s.lower->box.upper.y();
  s.upper_nut = s.upper->block;
  s.lower_nut = solid && !tapped;
  return s;
}

bool own(const Stud& s, const DrawnBar& b) {
  return &b == s.lower || &b == s.upper;
}

/// Distance from the axis to a bar between two heights: to its front (sign -1: it lies before the stud) or behind
/// (+1), and 0 in it; infinite where it is not there.
struct Wall {
  double distance = std::numeric_limits<double>::infinity();
  double side = 0;
};

Wall wall_at(const Stud& s, const DrawnBar& b, double low, double high, double reach) {
  if (miss(b.box.lower.y(), b.box.upper.y(), low, high) > -drawing_slack) return {};
  const double along = std::max({b.bar->start - s.at.x, s.at.x - b.bar->end(), 0.0});
  const auto extent = extent_between(b.outline, low, high);
  if (!extent || along > reach) return {};
  const double across = std::max({extent->first - s.at.y, s.at.y - extent->second, 0.0});
  return {std::hypot(along, across), extent->first > s.at.y ? 1.0 : -1.0};
}

void check_passage(Drawing& d, const Stud& s) {
  const double radius = s.post->diameter / 2;
  const double low = s.bottom - (s.lower_nut ? s.nut_height() : 0), high = s.top + (s.upper_nut ? s.nut_height() : 0);
  for (const DrawnBar& b : d.bars)
    if (!own(s, b) && wall_at(s, b, low, high, radius).distance < radius - drawing_slack)
      d.add({FaultKind::pierces, false, s.part, b.name, 0, 0, Quantity::length, s.at.x, s.post->pos, s.key});
  const double least = s.upper->box.upper.y() - s.lower->box.upper.y();
  if (s.post->free_length < least - drawing_slack)
    d.add({FaultKind::stud_short, false, s.part, "", s.post->free_length, least, Quantity::length, s.at.x, s.post->pos,
           s.key});
}

/// Room of one nut, whose washer lies on a face. \param up the direction in which it stands off the face.
void check_nut(Drawing& d, const Stud& s, double face, double up) {
  const double end = face + up * s.nut_height();
  const double low = std::min(face, end), high = std::max(face, end);
  const double flats = s.size.across_flats;
  std::array<Wall, 2> walls; // before the stud, behind it
  std::array<const DrawnBar*, 2> of{};
  for (const DrawnBar& b : d.bars) {
    if (own(s, b)) continue;
    const Wall w = wall_at(s, b, low, high, swing_room * flats);
    if (w.distance < s.washer - drawing_slack)
      return d.add({FaultKind::nut_room, false, s.part, b.name, w.distance, s.washer, Quantity::length, s.at.x,
                    s.post->pos, s.key});
    const std::size_t k = w.side > 0 ? 1 : 0;
    if (w.distance < walls[k].distance) {
      walls[k] = w;
      of[k] = &b;
    }
  }
  const bool between = std::max(walls[0].distance, walls[1].distance) < swing_room * flats;
  const double least = (between ? socket : open_spanner) * flats;
  const std::size_t k = walls[0].distance < walls[1].distance ? 0 : 1;
  if (of[k] && walls[k].distance < least - drawing_slack)
    d.add({FaultKind::spanner_room, true, s.part, of[k]->name, walls[k].distance, least, Quantity::length, s.at.x,
           s.post->pos, s.key});
}

/// Two nuts on one bar.
void check_pair(Drawing& d, const Stud& a, const Stud& b) {
  if (a.upper != b.upper && a.lower != b.lower) return;
  const double between = a.at.distance(b.at), least = a.washer + b.washer;
  if (between < least - drawing_slack)
    d.add({FaultKind::nut_room, false, b.part, a.part, between, least, Quantity::length, b.at.x, b.post->pos, b.key});
}

/// The eccentric under the clamp and a stud beside it.
void check_cam(Drawing& d, const Stud& s, const Cam& c, std::size_t i) {
  const auto at = d.place(c);
  if (!at || !(c.radius > 0) || !(c.width > 0)) return;
  const double radius = s.post->diameter / 2;
  const double beside = std::hypot(std::max(std::abs(s.at.x - at->x) - c.width / 2, 0.0),
                                   std::max(std::abs(s.at.y - at->y) - c.radius, 0.0));
  if (beside < radius - drawing_slack)
    d.add({FaultKind::pierces, false, s.part, called(JointKind::cam, c.name, i), 0, 0, Quantity::length, s.at.x,
           s.post->pos, s.key});
}

} // namespace

void check_studs(Drawing& d) {
  const Machine& m = d.machine;
  std::vector<Stud> studs;
  for (std::size_t i = 0; i < m.posts.size(); ++i)
    if (auto s = stud_of(d, i)) studs.push_back(std::move(*s));
  for (const Stud& s : studs) {
    check_passage(d, s);
    if (s.upper_nut) check_nut(d, s, s.top, 1);
    if (s.lower_nut) check_nut(d, s, s.bottom, -1);
    for (const Stud& other : studs)
      if (other.index < s.index) check_pair(d, other, s);
    for (std::size_t i = 0; i < m.cams.size(); ++i) check_cam(d, s, m.cams[i], i);
  }
}

} // namespace bedbow
