#include "io/case/case_joint_parts.h"

#include <cmath>
#include <utility>

namespace bedbow {

namespace {

void read_joint(const CaseBuilder& b, const CaseValues& in, Post& p) {
  joint_base(b, in, p);
  p.at = joint_place(b, in);
  p.diameter = in.number_or_nan("diameter");
  p.thread = thread_of(in, "diameter");
  p.grade = grade_of(b, in, p.diameter);
  p.free_length = in.number_or_nan("free_length");
  p.preload = in.number("preload");
  p.nut = in.choice_or("seat", nut_seats, p.nut);
  p.washer_diameter = in.number_or("washer_diameter", left_out);
  p.washer_thickness = in.number_or("washer_thickness", left_out);
  p.engagement = in.number_or("engagement", left_out);
  p.tapped = in.number_or("tapped", left_out);
  p.allowed_seat = in.number("allowed_seat");
  p.allowed_thread = in.number("allowed_thread");
  p.allowed_stress = in.number("allowed_stress");
}

void read_joint(const CaseBuilder& b, const CaseValues& in, Cam& c) {
  joint_base(b, in, c);
  c.at = joint_place(b, in);
  c.throw_ = in.number("throw");
  c.angle = in.number("angle");
  c.lag = in.number_or("lag", 0);
  c.linked = in.flag_or("linked", false);
  c.radius = in.number_or("radius", left_out);
  c.width = in.number_or("width", left_out);
  c.stiffness = in.number("stiffness");
  c.captive = in.flag_or("captive", false);
  c.material = material_of(b, in);
  c.friction = in.number_or("friction", c.friction);
  c.shaft = in.number_or("shaft", left_out);
  c.lever = in.number_or("lever", left_out);
  c.allowed_pressure = in.number("allowed_pressure");
  const bool by_angle = in.given("throw") || in.given("angle");
  if (in.given("lift") && by_angle) b.wrong(in, "lift", "give either `lift`, or `throw` and `angle`");
  if (!in.given("lift") && !by_angle) b.missing(in, "lift", "how far it would raise the tail, or `throw` and `angle`");
  if (!in.given("lift") && by_angle)
    for (const char* key : {"throw", "angle"})
      if (!in.given(key)) b.missing(in, key, "an eccentric needs both `throw` and `angle`");
  c.touch = in.number_or("touch", 0);
  for (const char* key : {"lag", "touch"})
    if (in.given(key) && !by_angle) b.wrong(in, key, "it needs `throw` and `angle`");
  c.lift = by_angle ? cam_lift(in.number_or_nan("throw"), in.number_or_nan("angle") - c.lag, c.touch)
                    : in.number_or_nan("lift");
}

void read_joint(const CaseBuilder& b, const CaseValues& in, Hinge& h) {
  joint_base(b, in, h);
  h.at = joint_place(b, in);
  h.pin = in.number_or("pin", left_out);
  h.bearing_length = in.number_or("bearing_length", left_out);
  h.gap = in.number_or("gap", 0);
  h.both_sides = in.flag_or("both_sides", false);
  h.end_float = in.number("end_float");
  h.pin_material = material_of(b, in, "pin_material");
  h.allowed_pressure = in.number("allowed_pressure");
  h.allowed_stress = in.number("allowed_stress");
  h.allowed_seat = in.number("allowed_seat");
}

/// Name and place in the file of what joins one bar with the ground.
void stands_on_ground(const CaseValues& in, JointBase& out) {
  joint_head(in, out);
  out.joins[1] = {Ref::Kind::ground};
}

void read_joint(const CaseBuilder& b, const CaseValues& in, Handle& h) {
  stands_on_ground(in, h);
  if (const int bar = bar_of(b, BodyKind::apron, in, "bar"); bar >= 0)
    h.joins[0] = {Ref::Kind::bar, BodyKind::apron, bar};
  h.at.x() = in.number_or_nan("x");
  h.reach = in.number_or("reach", left_out);
}

void read_joint(const CaseBuilder& b, const CaseValues& in, Tie& t) {
  joint_base(b, in, t);
  t.at = joint_place(b, in);
  t.holds = mask_of(in.texts("holds"));
  joint_stiffness(b, in, t.holds, t.stiffness, t.rotational_stiffness);
  t.only = in.choice_or("only", only_choices, t.only);
}

void read_joint(const CaseBuilder& b, const CaseValues& in, Weld& w) {
  joint_base(b, in, w);
  w.from = in.number_or("from", left_out);
  w.to = in.number_or("to", left_out);
  w.sides = in.integer_or("sides", w.sides);
}

void read_joint(const CaseBuilder& b, const CaseValues& in, Support& s) {
  stands_on_ground(in, s);
  s.joins[0] = ref_of(b, in, "bar");
  s.at = joint_place(b, in);
  s.holds = mask_of(in.texts("holds"));
  joint_stiffness(b, in, s.holds, s.stiffness, s.rotational_stiffness);
}

} // namespace

void build_joints(const CaseBuilder& b) {
  b.machine().each_joint_list([&](JointKind kind, auto& list) {
    for (const CaseValues& in : b.root.tables(info(kind).key)) read_joint(b, in, list.emplace_back());
  });
}

} // namespace bedbow
