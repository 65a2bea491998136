#include "mesh/check/sheet_room.h"

#include "mesh/check/drawing.h"

#include <algorithm>

namespace bedbow {

namespace {

/// Something round that stands between bed and clamp: along x from - to + half, its front at y [m].
void meet(SheetRoom& room, const Sheet& sheet, double x, double half, double front, const std::string& name) {
  if (miss(x - half, x + half, sheet.left(), sheet.right()) >= 0 || (room.depth && *room.depth <= front)) return;
  room.depth = front;
  room.depth_by = name;
}

} // namespace

std::optional<SheetRoom> sheet_room(const Machine& m, const Registry<ShapeEntry>& shapes) {
  if (!m.sheet || m.solve.dimension == 2) return std::nullopt;
  const Drawing d = drawing_of(m, shapes);
  SheetRoom out;
  out.least_flange = m.sheet->thickness + m.sheet->inside_radius;
  const int face = m.body(BodyKind::apron).edge_bar;
  if (const DrawnBar* b = face >= 0 ? d.find({Ref::Kind::bar, BodyKind::apron, face}) : nullptr)
    out.least_flange = std::max(out.least_flange, -b->box.upper.x());
  for (std::size_t i = 0; i < m.posts.size(); ++i)
    if (const auto at = d.place(m.posts[i]); at && m.posts[i].diameter > 0)
      meet(out, *m.sheet, at->x, m.posts[i].diameter / 2, at->y - m.posts[i].diameter / 2,
           called(JointKind::post, m.posts[i].name, i));
  for (std::size_t i = 0; i < m.cams.size(); ++i)
    if (const auto at = d.place(m.cams[i]); at && m.cams[i].radius > 0 && m.cams[i].width > 0)
      meet(out, *m.sheet, at->x, m.cams[i].width / 2, at->y - m.cams[i].radius,
           called(JointKind::cam, m.cams[i].name, i));
  return out;
}

} // namespace bedbow
