#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"
#include "mesh/build/seats.h"
#include "mesh/build/welds.h"
#include "mesh/machine/end_float.h"
#include "mesh/machine/stud_spring.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace bedbow::mesher {

namespace {

constexpr double rigid = std::numeric_limits<double>::infinity();
// Of an eccentric on its shaft unless given, and of one-sided stops, which have to be springs: far stiffer than any
// bar.
constexpr double cam_stiffness = 1e14;
// Keeps an apron that no hinge locates in the middle of its play, 1 N per mm (own choice): next to nothing.
constexpr double centring_stiffness = 1e3;

/// Middle of the nodes of a member, panel or part of the user's mesh along axis k.
double middle_of(const Builder& b, const Ref& r, int k) {
  double sum = 0;
  int count = 0;
  const auto add = [&](const auto& elements) {
    for (const auto& e : elements)
      if (e.owner == r)
        for (int n : e.nodes) {
          sum += b.mesh.nodes[n].x[k];
          ++count;
        }
  };
  add(b.mesh.beams);
  add(b.mesh.shells);
  return sum / std::max(count, 1);
}

/// Coordinate along axis k of the middle of the part that r names; ground is below everything.
double height_of(const Builder& b, const Ref& r, int k) {
  if (r.kind == Ref::Kind::ground) return -std::numeric_limits<double>::infinity();
  if (r.kind != Ref::Kind::bar) return middle_of(b, r, k);
  const Bar& bar = b.machine.bar(r);
  return k == 0 ? (bar.start + bar.end()) / 2 : bar.at[k - 1];
}

/// A joint of the machine's list of its kind, with nothing but its name.
Joint named_joint(const JointBase& j, JointKind kind, std::size_t index) {
  Joint out;
  out.kind = kind;
  out.index = static_cast<int>(index);
  out.name = j.name.empty() ? numbered(kind, index) : j.name;
  return out;
}

/// Whether the second of `joins` is the lower along axis k; the clamp always counts as above the bed.
bool second_is_lower(const Builder& b, const JointBase& j, int k) {
  if (j.joins[1].kind == Ref::Kind::ground) return true;
  const bool clamp_first = j.joins[0].kind == Ref::Kind::bar && j.joins[0].body == BodyKind::clamp;
  const bool clamp_second = j.joins[1].kind == Ref::Kind::bar && j.joins[1].body == BodyKind::clamp;
  if (k == 2 && clamp_first != clamp_second) return clamp_first && j.joins[1].kind == Ref::Kind::bar;
  return height_of(b, j.joins[0], k) > height_of(b, j.joins[1], k);
}

/// A joint between the two sides of `j`, oriented so that a is the lower along axis k: then stretch is what pulls
/// apart.
template <class J>
Joint make_joint(const Builder& b, const J& j, JointKind kind, std::size_t index, int k, const Eigen::Vector3d& at) {
  Joint out = named_joint(j, kind, index);
  out.swapped = second_is_lower(b, j, k);
  out.a = side_of(b, j, kind, out.swapped ? 1 : 0, at);
  out.b = side_of(b, j, kind, out.swapped ? 0 : 1, at);
  return out;
}

/// Where a stud's nut bears on the upper part, where the lower part holds it at the end of the free length, and where
/// it passes shear without moment: in the middle between the two, or at a spherical seat.
struct StudPlaces {
  Eigen::Vector3d nut, held, shear;
};

/// The nut bears on the top face of the upper bar; a z of the case is where the stud passes shear.
StudPlaces stud_places(const Builder& b, const Post& p, const Ref& lower, const Ref& upper) {
  const Eigen::Vector3d at = place_of(b.machine, b.mesh, p, JointKind::post);
  if (std::isfinite(p.at.z()) || upper.kind != Ref::Kind::bar) return {at, at, at};
  const double top = box_of(b.machine, b.mesh, upper).upper.y();
  const auto below = [&](double depth) { return Eigen::Vector3d(at.x(), at.y(), top - depth); };
  return {below(0), lower.kind == Ref::Kind::bar ? below(p.free_length) : at,
          below(p.nut == NutSeat::spherical ? 0 : p.free_length / 2)};
}

/// The place carried rigidly on to another point.
Place carried_to(Place place, const Eigen::Vector3d& at) {
  for (PlaceTerm& t : place.terms) t.movement = carry(at - place.at) * t.movement;
  place.at = at;
  return place;
}

void add_posts(Builder& b) {
  for (std::size_t i = 0; i < b.machine.posts.size(); ++i) {
    const Post& p = b.machine.posts[i];
    Joint j = named_joint(p, JointKind::post, i);
    j.swapped = second_is_lower(b, p, uz);
    const Ref &lower = p.joins[j.swapped ? 1 : 0], &upper = p.joins[j.swapped ? 0 : 1];
    const StudPlaces places = stud_places(b, p, lower, upper);
    j.a = carried_to(side_of(b, p, JointKind::post, j.swapped ? 1 : 0, places.held), places.shear);
    j.b = carried_to(side_of(b, p, JointKind::post, j.swapped ? 0 : 1, places.nut), places.shear);
    j.stiffness[uz] = stud_stiffness(p);
    j.stiffness[ux] = j.stiffness[uy] = stud_shear_stiffness(p);
    j.sense[uz] = UnilateralType::tension;
    j.preload = p.preload;
    b.mesh.joints.push_back(std::move(j));
  }
}

void add_cams(Builder& b) {
  for (std::size_t i = 0; i < b.machine.cams.size(); ++i) {
    const Cam& c = b.machine.cams[i];
    Joint j = make_joint(b, c, JointKind::cam, i, 2, place_of(b.machine, b.mesh, c, JointKind::cam));
    j.stiffness[uz] = c.stiffness.value_or(cam_stiffness);
    j.sense[uz] = UnilateralType::compression;
    j.gap[uz] = c.lift;
    b.mesh.joints.push_back(std::move(j));
  }
}

/// Stops of a hinge with play, either way along x: joints of their own, since they act one way each.
void add_end_stops(Builder& b, const Joint& hinge, double end_float) {
  for (const UnilateralType sense : {UnilateralType::tension, UnilateralType::compression}) {
    Joint stop = hinge;
    stop.part = sense == UnilateralType::tension ? 1 : 2;
    stop.stiffness = {cam_stiffness, 0, 0, 0, 0, 0};
    stop.sense[ux] = sense;
    stop.gap[ux] = sense == UnilateralType::tension ? end_float / 2 : -end_float / 2;
    b.mesh.joints.push_back(std::move(stop));
  }
}

void add_hinges(Builder& b) {
  const bool located = hinges_locate(b.machine);
  for (std::size_t i = 0; i < b.machine.hinges.size(); ++i) {
    const Hinge& h = b.machine.hinges[i];
    const Eigen::Vector3d at = place_of(b.machine, b.mesh, h, JointKind::hinge);
    Joint j = named_joint(h, JointKind::hinge, i);
    j.swapped = h.joins[0].body == BodyKind::apron;
    j.a = side_of(b, h, JointKind::hinge, j.swapped ? 1 : 0, at);
    j.b = side_of(b, h, JointKind::hinge, j.swapped ? 0 : 1, at);
    // A pin in a short bearing has enough play to lean: it fixes the point, not the direction.
    const double end_float = end_float_of(b.machine, i);
    const bool play = end_float > 0 && std::isfinite(end_float);
    const double along = end_float == 0 ? rigid : play && !located ? centring_stiffness : 0;
    j.stiffness = {along, rigid, rigid, 0, 0, 0};
    b.mesh.joints.push_back(j);
    if (play) add_end_stops(b, j, end_float);
  }
}

void add_handles(Builder& b) {
  for (std::size_t i = 0; i < b.machine.handles.size(); ++i) {
    const Handle& h = b.machine.handles[i];
    Joint j = named_joint(h, JointKind::handle, i);
    const Eigen::Vector3d at = place_of(b.machine, b.mesh, h, JointKind::handle);
    j.b = side_of(b, h, JointKind::handle, 0, at);
    j.a.at = at;
    j.swapped = true; // the bar, then ground
    j.stiffness[rx] = rigid;
    b.mesh.joints.push_back(std::move(j));
  }
}

void add_ties(Builder& b) {
  for (std::size_t i = 0; i < b.machine.ties.size(); ++i) {
    const Tie& t = b.machine.ties[i];
    const Eigen::Vector3d at = place_of(b.machine, b.mesh, t, JointKind::tie);
    // A one-sided tie is a joint per held direction, since which side is "lower" differs by axis.
    for (int k = 0; k < 6; ++k) {
      if (!t.holds[k]) continue;
      if (t.only == UnilateralType::both && k != 0 && !b.mesh.joints.empty() &&
          b.mesh.joints.back().kind == JointKind::tie && b.mesh.joints.back().index == static_cast<int>(i)) {
        // joins the joint already begun for this tie
      } else {
        b.mesh.joints.push_back(make_joint(b, t, JointKind::tie, i, k % 3, at));
      }
      Joint& j = b.mesh.joints.back();
      const auto given = k < 3 ? t.stiffness : t.rotational_stiffness;
      double stiffness = given.value_or(rigid);
      if (t.only != UnilateralType::both) {
        if (!std::isfinite(stiffness))
          stiffness = cam_stiffness; // unilateral constraints are springs, this one very stiff
        j.sense[k] = t.only;
      }
      j.stiffness[k] = stiffness;
    }
  }
}

void add_supports(Builder& b) {
  for (std::size_t i = 0; i < b.machine.supports.size(); ++i) {
    const Support& s = b.machine.supports[i];
    Joint j = named_joint(s, JointKind::support, i);
    const Eigen::Vector3d at = place_of(b.machine, b.mesh, s, JointKind::support);
    j.b = side_of(b, s, JointKind::support, 0, at);
    j.a.at = at;
    j.swapped = true; // the bar, then ground
    for (std::size_t k = 0; k < 6; ++k)
      if (s.holds[k]) j.stiffness[k] = (k < 3 ? s.stiffness : s.rotational_stiffness).value_or(rigid);
    b.mesh.joints.push_back(std::move(j));
  }
}

} // namespace

void mesh_joints(Builder& b) {
  add_posts(b);
  add_cams(b);
  add_hinges(b);
  add_handles(b);
  add_ties(b);
  mesh_screws(b);
  add_supports(b);
  for (std::size_t i = 0; i < b.machine.welds.size(); ++i)
    add_weld(b.machine, b.machine.welds[i], static_cast<int>(i), b.mesh);
}

} // namespace bedbow::mesher
