// Holes of posts and screws: in their bars, with metal around them, and apart from each other.
#include "mesh/check/drawing.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// Least distance from the axis of a clearance hole to an edge, and between two holes, over its diameter.
/// Source: EN 1993-1-8:2005 Table 3.3, e1, e2 >= 1.2 d0 and p1 >= 2.2 d0.
constexpr double least_edge = 1.2, least_pitch = 2.2;

/// A joint with its holes, for messages.
struct Drilled {
  std::string part, key;
  SourcePos pos;
};

/// One hole in a bar.
struct Hole {
  double x = 0, across = 0; ///< of its axis; across: y, or z where it runs along y [m]
  double from = 0, to = 0;  ///< of the bar, across [m]
  double least = 0;         ///< distance to an edge [m]
  [[nodiscard]] double beside() const { return std::max({from - across, across - to, 0.0}); }
};

/// What a hole needs around it: a clearance hole by EN 1993-1-8; a tapped one as much metal as a hexagon nut has, which
/// is as strong as the thread. Source: ISO 4032 across flats.
double least_around(const Hardware& h, bool tapped) {
  return tapped ? h.across_flats / 2 : least_edge * h.hole;
}

void check_hole(Drawing& d, const Drilled& j, const DrawnBar& b, const Hole& hole) {
  const double past = std::max({b.bar->start - hole.x, hole.x - b.bar->end(), hole.beside(), 0.0});
  if (past > drawing_slack)
    return d.add({FaultKind::off_bar, false, j.part, b.name, past, 0, Quantity::length, hole.x, j.pos, j.key});
  const double edge =
      std::min({hole.across - hole.from, hole.to - hole.across, hole.x - b.bar->start, b.bar->end() - hole.x});
  if (edge < hole.least - drawing_slack)
    d.add({FaultKind::edge_distance, true, j.part, b.name, edge, hole.least, Quantity::length, hole.x, j.pos, j.key});
}

Hardware hardware_of(const std::string& thread, double diameter) {
  return hardware(thread_of_size(thread, diameter));
}

void check_post(Drawing& d, const Post& p, const Drilled& j) {
  const auto at = d.place(p);
  if (!at || !(p.diameter > 0)) return;
  const Hardware h = hardware_of(p.thread, p.diameter);
  const auto bars = d.joined(p);
  for (const DrawnBar* b : bars) {
    const bool tapped = std::isfinite(p.tapped) && b == bars.front();
    check_hole(d, j, *b, {at->x, at->y, b->box.lower.x(), b->box.upper.x(), least_around(h, tapped)});
  }
}

/// Axis along which a row of screws runs through its bars: 0 y, 1 z; bars overlap least across the faces that meet.
int axis_of_row(const DrawnBar& a, const DrawnBar& b) {
  const Eigen::Vector2d overlap = a.box.upper.cwiseMin(b.box.upper) - a.box.lower.cwiseMax(b.box.lower);
  return overlap[0] < overlap[1] ? 0 : 1;
}

void check_row(Drawing& d, const Screws& s, const Drilled& j) {
  const auto bars = d.joined(s);
  if (bars.size() < 2 || s.x.empty() || !(s.diameter > 0)) return;
  const int axis = axis_of_row(*bars[0], *bars[1]), across = 1 - axis;
  const Hardware h = hardware_of(s.thread, s.diameter);
  const auto depth = [&](const DrawnBar& b) { return b.box.upper[axis] - b.box.lower[axis]; };
  const DrawnBar* deeper = depth(*bars[0]) > depth(*bars[1]) ? bars[0] : bars[1]; // the thread is cut in it
  const auto [first, last] = std::ranges::minmax(s.x);
  for (const DrawnBar* b : bars) {
    const double middle = (b->bar->start + b->bar->end()) / 2;
    const double outer = std::abs(first - middle) > std::abs(last - middle) ? first : last;
    check_hole(d, j, *b,
               {outer, d.whole_place(s)[across + 1], b->box.lower[across], b->box.upper[across],
                least_around(h, b == deeper)});
  }
  const double pitch = s.x.size() > 1 ? std::abs(s.x[1] - s.x[0]) : HUGE_VAL;
  if (pitch < least_pitch * h.hole - drawing_slack)
    d.add({FaultKind::pitch, true, j.part, "", pitch, least_pitch * h.hole, Quantity::length, first, j.pos, j.key});
}

bool share_a_bar(const JointBase& a, const JointBase& b) {
  return std::ranges::any_of(a.joins, [&](const Ref& r) {
    return r.kind == Ref::Kind::bar && std::ranges::find(b.joins, r) != b.joins.end();
  });
}

/// A post's hole and those of a row that runs along z as well.
void check_meeting(Drawing& d, const Post& p, const Drilled& j, const Screws& s, const std::string& row) {
  const auto at = d.place(p);
  const auto bars = d.joined(s);
  if (!at || bars.size() < 2 || !share_a_bar(p, s) || axis_of_row(*bars[0], *bars[1]) != 1) return;
  const double y = d.whole_place(s).y();
  const double least = (hardware_of(p.thread, p.diameter).hole + s.diameter) / 2;
  for (const double x : s.x)
    if (const double between = at->distance({x, y}); between < least)
      return d.add({FaultKind::holes_meet, false, j.part, row, between, least, Quantity::length, x, j.pos, j.key});
}

template <class J> Drilled drilled(JointKind kind, const J& joint, std::size_t i) {
  return {called(kind, joint.name, i), joint_key(info(kind).key, joint.name, i), joint.pos};
}

} // namespace

double least_edge_of_hole(const Post& post) {
  return least_around(hardware_of(post.thread, post.diameter), false);
}

void check_holes(Drawing& d) {
  const Machine& m = d.machine;
  for (std::size_t i = 0; i < m.posts.size(); ++i) {
    const Drilled j = drilled(JointKind::post, m.posts[i], i);
    check_post(d, m.posts[i], j);
    for (std::size_t k = 0; k < m.screws.size(); ++k)
      check_meeting(d, m.posts[i], j, m.screws[k], called(JointKind::screw, m.screws[k].name, k));
  }
  for (std::size_t i = 0; i < m.screws.size(); ++i)
    check_row(d, m.screws[i], drilled(JointKind::screw, m.screws[i], i));
}

} // namespace bedbow
