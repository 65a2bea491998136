// Seats of joints: no larger than their bars, and within the parts of the user's mesh that they lie on.
#include "mesh/check/validate_parts.h"
#include "mesh/machine/seat.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

std::string size_text(const Eigen::Vector2d& size) {
  return in_mm(size.x()) + " x " + in_mm(size.y());
}

void validate_on_bar(Validator& v, const JointBase& j, const Ref& r, const BarBox& box, const std::string& key) {
  const Bar& bar = v.machine.bar(r);
  const double height = (box.upper - box.lower).maxCoeff();
  if (j.seat.x() <= bar.length + same_length && j.seat.y() <= height + same_length) return;
  v.error(j.pos, key,
          "its `seat` of " + size_text(j.seat) + " is larger than " + v.machine.name_of(r) + ", which is " +
              in_mm(bar.length) + " long and " + in_mm(height) + " wide; give the size of what touches the bar");
}

/// A seat on quads must have material under it all over: where it does not, it rests on less than the case says.
void validate_on_mesh(Validator& v, const JointBase& j, const Ref& r, const std::string& key) {
  const UserMeshFace face = nearest_face(v.machine.own, r.index, j.at);
  if (!face.quad) return;
  const auto [along, across] = seat_directions(face.normal);
  constexpr int pieces = 8;
  for (int i = 0; i <= pieces; ++i)
    for (int k = 0; k <= pieces; ++k) {
      const Eigen::Vector3d at = face.spot + (double(i) / pieces - 0.5) * j.seat.x() * along +
                                 (double(k) / pieces - 0.5) * j.seat.y() * across;
      if (nearest_on_part(v.machine.own, r.index, at).distance <= off_the_part) continue;
      return v.error(j.pos, key,
                     "its `seat` of " + size_text(j.seat) + " extends over a hole or an edge of " +
                         v.machine.name_of(r) + " at " + place_in_mm(at) + "; give a smaller `seat`, or another place");
    }
}

template <class J> void validate_seat(Validator& v, const J& j, JointKind kind, std::size_t index) {
  if (!j.seat.allFinite()) return;
  const std::string key = joint_key(info(kind).key, j.name, index);
  SideBoxes boxes;
  for (std::size_t i = 0; i < 2; ++i)
    if (j.joins[i].kind == Ref::Kind::bar) boxes[i] = v.box(j.joins[i]);
  const auto seats =
      bar_seats(v.machine, j, contact_of(j), acts_along_z(kind), boxes, place_of(v.machine, j, kind, boxes));
  for (std::size_t i = 0; i < 2; ++i) {
    if (boxes[i] && seats[i].given) validate_on_bar(v, j, j.joins[i], *boxes[i], key);
    if (j.joins[i].kind == Ref::Kind::own && j.at.allFinite()) validate_on_mesh(v, j, j.joins[i], key);
  }
}

} // namespace

void validate_seats(Validator& v) {
  v.machine.each_joint_list([&](JointKind kind, const auto& list) {
    for (std::size_t i = 0; i < list.size(); ++i) validate_seat(v, list[i], kind, i);
  });
}

} // namespace bedbow
