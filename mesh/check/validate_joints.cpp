#include "mesh/build/screw_faces.h"
#include "mesh/check/validate_parts.h"

#include <algorithm>
#include <cmath>

namespace bedbow {

namespace {

/// A joint this far from a bar is most likely a mistake, although a rigid arm can carry it [m].
constexpr double far_arm = 0.05;

bool holds_any(const DofMask& mask) {
  return std::ranges::any_of(mask, [](bool held) { return held; });
}

/// x must lie within a bar's length; y and z may lie beside it, but not far.
void validate_place(Validator& v, const Ref& r, const GivenPoint& at, SourcePos pos, const std::string& key,
                    const std::string& what) {
  const std::string name = v.machine.name_of(r);
  if (r.kind == Ref::Kind::own && at.allFinite()) {
    const double arm = nearest_on_part(v.machine.own, r.index, at).distance;
    if (arm > far_arm)
      v.warning(pos, key, what + " is " + in_mm(arm) + " away from " + name + "; a rigid arm joins it");
  }
  if (r.kind != Ref::Kind::bar) return;
  const Bar& bar = v.machine.bar(r);
  if (at.x() < bar.start - same_length || at.x() > bar.end() + same_length) {
    v.error(pos, key,
            what + " at x = " + in_mm(at.x()) + " is off the bar " + name +
                ", which extends from x = " + in_mm(bar.start) + " to " + in_mm(bar.end()));
    return;
  }
  const auto& box = v.box(r);
  if (!box || !std::isfinite(at.y())) return;
  const double z = std::isfinite(at.z()) ? at.z() : (box->lower.y() + box->upper.y()) / 2;
  const double arm = box->distance({at.y(), z});
  const double side = (box->upper - box->lower).maxCoeff();
  if (arm > std::max(far_arm, side))
    v.warning(pos, key, what + " is " + in_mm(arm) + " beside the bar " + name + "; a rigid arm joins it");
}

void validate_joins(Validator& v, const JointBase& j, const std::string& key, const std::string& what) {
  const auto& [one, other] = j.joins;
  if (one.kind == Ref::Kind::none || other.kind == Ref::Kind::none) return;
  if (one == other)
    v.error(j.pos, key, what + " joins " + v.machine.name_of(one) + " to itself; `joins` must name two different bars");
  const bool bar = one.kind == Ref::Kind::bar || other.kind == Ref::Kind::bar;
  if (!bar && !j.at.allFinite())
    v.error(j.pos, key, what + " joins no bar to take its place from; give the whole place: at = [x, y, z]");
  for (const Ref& r : j.joins) validate_place(v, r, j.at, j.pos, key, what);
}

bool joins_body(const JointBase& j, BodyKind body) {
  return std::ranges::any_of(j.joins, [&](const Ref& r) { return r.kind == Ref::Kind::bar && r.body == body; });
}

bool known(const JointBase& j) {
  return std::ranges::none_of(j.joins, [](const Ref& r) { return r.kind == Ref::Kind::none; });
}

void validate_hinge(Validator& v, const Hinge& h, const std::string& key) {
  if (known(h) && !joins_body(h, BodyKind::apron))
    v.error(h.pos, key, "a hinge joins the apron to another part; use a [[tie]] for any other joint");
  if (!h.end_float) return;
  // Without a bearing to slide out of, the bound of small displacements (docs/theory/validity.md).
  const bool bearing = std::isfinite(h.bearing_length);
  const double most = bearing ? h.bearing_length : v.machine.body(BodyKind::apron).length / 30;
  if (*h.end_float > most)
    v.error(h.pos, key,
            "an end float of " + in_mm(*h.end_float) + " is more than " +
                (bearing ? "its bearing's length, " : "a thirtieth of the apron's length, ") + in_mm(most) +
                "; give the play between the shoulders in all, or omit `end_float` where the hinge floats freely");
}

/// A screw must fit in the faces in which the bars of its row touch.
void validate_screw_size(Validator& v, const Screws& s, const std::string& key) {
  for (const Ref& r : s.joins) {
    if (r.kind != Ref::Kind::bar || !v.box(r)) continue;
    const Eigen::Vector2d size = v.box(r)->upper - v.box(r)->lower;
    if (s.diameter >= size.maxCoeff())
      v.error(s.pos, key, "a screw of " + in_mm(s.diameter) + " is wider than the bar " + v.machine.name_of(r));
  }
}

/// Requirements of a row of screws on the part of the user's mesh that it joins to a bar: quads that lie on the bar.
void validate_screwed_part(Validator& v, const Screws& s, const Ref& part, const Ref& bar, const std::string& key) {
  constexpr double slack = 0.002; // a plate drawn by its mid-plane may miss the bar's face by rounding, but not by more
  const std::string name = v.machine.name_of(part);
  const auto& box = v.box(bar);
  if (!box) return;
  for (const double x : s.x) {
    const Eigen::Vector3d at = screw_place(v.machine.bar(bar), s, x);
    const UserMeshFace face = nearest_face(v.machine.own, part.index, at);
    if (!face.quad) return v.error(s.pos, key, name + " has no quads; join lines by a [[tie]] at each screw");
    const int k = std::abs(face.normal.y()) > std::abs(face.normal.z()) ? 1 : 2;
    if (std::abs(face.normal[k]) < 0.9)
      return v.error(s.pos, key,
                     name + " faces neither up nor to the rear at x = " + in_mm(x) +
                         ", so a row along x can't go through it; use a [[tie]] at each screw");
    Eigen::Vector3d off = face.spot - at;
    off[k] = 0;
    if (off.norm() > slack)
      return v.error(s.pos, key, name + " does not reach to the screw at x = " + in_mm(x) + ", y = " + in_mm(at.y()));
    const double half = face.quad->thickness / 2, middle = face.spot[k];
    const double gap = std::max(middle - half, box->lower[k - 1]) - std::min(middle + half, box->upper[k - 1]);
    if (gap > slack)
      return v.error(s.pos, key,
                     name + " is " + in_mm(gap) + " away from " + v.machine.name_of(bar) + " at x = " + in_mm(x) +
                         "; screwed parts must touch");
  }
}

void validate_screws(Validator& v) {
  const auto& rows = v.machine.screws;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Screws& s = rows[i];
    const std::string key = joint_key("screws", s.name, i);
    if (known(s) && s.joins[0] == s.joins[1]) v.error(s.pos, key, "the row joins a bar to itself");
    const auto of_kind = [&](Ref::Kind kind) {
      return std::ranges::count_if(s.joins, [&](const Ref& r) { return r.kind == kind; });
    };
    const bool on_mesh = of_kind(Ref::Kind::own) == 1 && of_kind(Ref::Kind::bar) == 1;
    if (known(s) && of_kind(Ref::Kind::bar) < 2 && !on_mesh)
      v.error(s.pos, key,
              "a row of screws joins two bars, or a bar and a part of the mesh; join anything else by a [[tie]] at "
              "each screw");
    if (on_mesh && std::isfinite(s.diameter)) {
      const bool first = s.joins[0].kind == Ref::Kind::own;
      validate_screwed_part(v, s, s.joins[first ? 0 : 1], s.joins[first ? 1 : 0], key);
    }
    if (!s.x.empty()) {
      const std::size_t before = v.problems.size();
      for (double x : {s.x.front(), s.x.back()})
        for (const Ref& r : s.joins)
          if (v.problems.size() == before) validate_place(v, r, {x, left_out, left_out}, s.pos, key, "a screw");
    }
    if (s.x.size() > 1 && std::abs(s.x[1] - s.x[0]) < s.diameter)
      v.error(s.pos, key, "the screws are closer to each other than their diameter");
    validate_screw_size(v, s, key);
  }
}

void validate_welds(Validator& v) {
  const auto& welds = v.machine.welds;
  for (std::size_t i = 0; i < welds.size(); ++i) {
    const Weld& w = welds[i];
    const std::string key = joint_key("weld", w.name, i);
    if (known(w) && w.joins[0] == w.joins[1]) v.error(w.pos, key, "it joins a bar to itself");
    if (std::ranges::any_of(w.joins, [](const Ref& r) { return r.kind != Ref::Kind::bar; })) {
      if (known(w)) v.error(w.pos, key, "a weld joins two bars");
      continue;
    }
    const Bar &a = v.machine.bar(w.joins[0]), &b = v.machine.bar(w.joins[1]);
    const double from = std::fmax(std::fmax(a.start, b.start), w.from),
                 to = std::fmin(std::fmin(a.end(), b.end()), w.to);
    if (to <= from) v.error(w.pos, key, "the two bars have no common length there");
    if (std::fmin(w.from, w.to) < std::max(a.start, b.start) - same_length ||
        std::fmax(w.from, w.to) > std::min(a.end(), b.end()) + same_length)
      v.warning(w.pos, key, "it extends beyond the common length of the two bars, where it joins nothing");
  }
}

/// What stands on the ground: its bar, and where.
void validate_standing(Validator& v, const JointBase& j, const std::string& key, const std::string& what) {
  const Ref& bar = j.joins[0];
  validate_place(v, bar, j.at, j.pos, key, what);
  if (bar.kind == Ref::Kind::ground) v.error(j.pos, key, "it holds the ground to the ground");
  const bool placed = bar.kind == Ref::Kind::bar || j.at.allFinite();
  if (bar.kind != Ref::Kind::none && bar.kind != Ref::Kind::ground && !placed)
    v.error(j.pos, key, "it holds no bar to take its place from; give the whole place: at = [x, y, z]");
}

} // namespace

void validate_joints(Validator& v) {
  const Machine& m = v.machine;
  m.each_joint_list([&](JointKind kind, const auto& list) {
    if (kind == JointKind::screw || kind == JointKind::weld) return; // rows and runs, below
    const std::string what = info(kind).key;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const bool standing = kind == JointKind::handle || kind == JointKind::support;
      (standing ? validate_standing : validate_joins)(v, list[i], joint_key(what, list[i].name, i), "the " + what);
    }
  });
  for (std::size_t i = 0; i < m.hinges.size(); ++i)
    validate_hinge(v, m.hinges[i], joint_key("hinge", m.hinges[i].name, i));
  for (std::size_t i = 0; i < m.ties.size(); ++i)
    if (known(m.ties[i]) && !holds_any(m.ties[i].holds))
      v.error(m.ties[i].pos, joint_key("tie", m.ties[i].name, i), "it holds no degree of freedom");
  validate_screws(v);
  validate_welds(v);
}

} // namespace bedbow
