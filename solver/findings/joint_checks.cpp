#include "solver/findings/joint_checks.h"

#include "mesh/build/places.h"
#include "mesh/build/screw_faces.h"
#include "mesh/machine/stud_spring.h"
#include "mesh/piece/fastener.h"
#include "solver/strength/hertz.h"
#include "solver/strength/nut.h"
#include "solver/strength/pin.h"
#include "solver/strength/screw.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow {

namespace {

std::string joined_names(const std::vector<std::string>& names) {
  std::string out;
  for (const std::string& name : names) out += (out.empty() ? "" : ", ") + name;
  return out;
}

/// The clamp's side of a joint; the second of `joins` where the clamp is in none.
const Ref& upper_side(const JointBase& j) {
  const bool first = j.joins[0].kind == Ref::Kind::bar && j.joins[0].body == BodyKind::clamp;
  return j.joins[first ? 0 : 1];
}

const Ref& lower_side(const JointBase& j) {
  return j.joins[&upper_side(j) == &j.joins[0] ? 1 : 0];
}

Seat seat_of(const Post& p, const Thread& thread) {
  if (p.nut == NutSeat::plain) return nut_seat(thread, false);
  const Hardware h = hardware(thread);
  return nut_seat(thread, std::isfinite(p.washer_diameter) ? p.washer_diameter : h.washer_diameter,
                  std::isfinite(p.washer_thickness) ? p.washer_thickness : h.washer_thickness);
}

} // namespace

double JointChecks::utilisation() const {
  double most = 0;
  for (const Check& c : checks) most = std::max(most, c.utilisation());
  return most;
}

Material material_of_bar(const Machine& machine, const Mesh& mesh, const Ref& ref) {
  if (ref.kind != Ref::Kind::bar) return {};
  const Bar& bar = machine.bar(ref);
  Material out = machine.materials.at(static_cast<std::size_t>(bar.material));
  const BarBox box = box_of(machine, mesh, ref);
  const double thickness = bar.shape.wall > 0 ? bar.shape.wall : (box.upper - box.lower).minCoeff();
  if (thickness > 0) out.yield = yield_for_thickness(out, thickness);
  return out;
}

JointChecks check_post(const Machine& machine, const Mesh& mesh, const Post& p, double tension, double shear,
                       const StudEnds& ends) {
  JointChecks out;
  tension = std::max(tension, 0.0);
  const Thread thread = thread_of_size(p.thread, p.diameter);
  const auto grade = find_grade(p.grade, p.diameter);
  const Stud stud{stress_diameter(thread), p.free_length, fastener_E};
  // The section of the machine's spring, so that the moment is that of the spring's force.
  const double moment = stud_moment({stud_diameter(p), p.free_length, fastener_E}, ends, p.nut == NutSeat::spherical);
  if (grade)
    out.checks.push_back({"proof load", tension, {proof_load(thread, *grade), grade->source}, Quantity::force});
  out.checks.push_back(check_stud(stud, tension, shear, moment, grade ? grade->yield : 0, p.allowed_stress));
  const Material under = material_of_bar(machine, mesh, upper_side(p));
  out.checks.push_back(check_seat(seat_of(p, thread), tension, under, p.allowed_seat));
  if (!grade && !p.allowed_thread) return out;
  const double tensile = grade ? grade->tensile : 0;
  // A nut of the stud's own class is as strong as the stud (ISO 898-2, from memory).
  const double height = std::isfinite(p.engagement) ? p.engagement : hardware(thread).nut_height;
  out.checks.push_back(
      check_thread_shear({thread, height, tensile, tensile}, tension, thread_reserve, p.allowed_thread));
  if (!std::isfinite(p.tapped)) return out;
  const Material tapped = material_of_bar(machine, mesh, lower_side(p));
  Check check =
      check_thread_shear({thread, p.tapped, tensile, tapped.tensile}, tension, thread_reserve, p.allowed_thread);
  check.what = "tapped thread";
  out.checks.push_back(std::move(check));
  return out;
}

JointChecks check_cam(const Machine& machine, const Mesh& mesh, const Cam& cam, double compression) {
  JointChecks out;
  if (!std::isfinite(cam.radius) || !std::isfinite(cam.width)) return out;
  const Material plate = material_of_bar(machine, mesh, upper_side(cam));
  const Material own = cam.material >= 0 ? machine.materials.at(static_cast<std::size_t>(cam.material)) : plate;
  if (!(plate.E > 0)) return out;
  const ContactBody round{cam.radius, own.E, own.nu};
  const ContactBody flat{std::numeric_limits<double>::infinity(), plate.E, plate.nu};
  const LineContact contact = line_contact(std::max(compression, 0.0) / cam.width, round, flat);
  double yield = std::min(own.yield, plate.yield);
  if (yield == 0) yield = std::max(own.yield, plate.yield);
  Check peak = check_line_contact(contact, yield, cam.allowed_pressure);
  peak.what = "cam contact";
  out.checks.push_back(std::move(peak));
  out.checks.push_back({"shear below the contact",
                        contact.shear,
                        {yield / 2, "half the yield of the softer part (Tresca)"},
                        Quantity::stress,
                        Failure::wears});
  if (cam.allowed_pressure) out.checks.pop_back(); // the case's value replaces both
  return out;
}

JointChecks check_hinge(const Machine& machine, const Mesh& mesh, const Hinge& hinge, double force, bool swings) {
  JointChecks out;
  if (!std::isfinite(hinge.pin) || !std::isfinite(hinge.bearing_length)) return out;
  const bool apron_first = hinge.joins[0].kind == Ref::Kind::bar && hinge.joins[0].body == BodyKind::apron;
  Pin pin;
  pin.diameter = hinge.pin;
  pin.bearing_length = hinge.bearing_length;
  pin.shear_planes = hinge.both_sides ? 2 : 1;
  pin.gap = hinge.gap;
  pin.swings = swings;
  // Wear is in the hole of the softer bar.
  const Material one = material_of_bar(machine, mesh, hinge.joins[0]);
  const Material other = material_of_bar(machine, mesh, hinge.joins[1]);
  pin.hole = other.E == 0 || (one.E > 0 && one.yield < other.yield) ? one : other;
  if (!(pin.hole.E > 0)) return out;
  const Material& held = apron_first ? other : one;
  pin.pin = hinge.pin_material >= 0 ? machine.materials.at(static_cast<std::size_t>(hinge.pin_material))
            : held.E > 0            ? held
                                    : pin.hole;
  pin.seat = held;
  pin.allowed_pressure = hinge.allowed_pressure;
  pin.allowed_stress = hinge.allowed_stress;
  pin.allowed_seat = hinge.allowed_seat;
  const PinResult result = check_pin(pin, force);
  out.checks = result.checks;
  for (Check& c : out.checks)
    if (c.what == "pin's seat") c.what += " in " + machine.plain_name(hinge.joins[apron_first ? 1 : 0]);
  if (result.fate != HoleFate::keeps) out.remarks.push_back(describe(pin, result));
  return out;
}

JointChecks check_screws(const Machine& machine, const Mesh& mesh, const Screws& s, const ScrewFaces& faces,
                         double shear, double tension) {
  JointChecks out;
  const auto grade = find_grade(s.grade, s.diameter);
  if (!grade) return out;
  const std::size_t thinner = faces.side[0].wall < faces.side[1].wall ? 0 : 1;
  const double thickness = faces.side[thinner].wall;
  if (!(thickness > 0)) return out;
  Screw screw;
  screw.thread = thread_of_size(s.thread, s.diameter);
  screw.grade = *grade;
  screw.plate_thickness = thickness;
  screw.plate = s.joins[thinner].kind == Ref::Kind::bar
                    ? material_of_bar(machine, mesh, s.joins[thinner])
                    : machine.materials.at(static_cast<std::size_t>(faces.side[thinner].material));
  if (s.joins[thinner].kind == Ref::Kind::own) screw.plate.yield = yield_for_thickness(screw.plate, thickness);
  screw.allowed_shear = s.allowed_shear;
  screw.allowed_tension = s.allowed_tension;
  screw.allowed_bearing = s.allowed_bearing;
  out.checks = check_screw(screw, shear, tension);
  return out;
}

std::string unchecked_stress(const Machine& m) {
  std::vector<std::string> parts, materials;
  const auto look = [&](int material, std::string part) {
    if (material < 0) return;
    const Material& of = m.materials.at(static_cast<std::size_t>(material));
    if (of.yield > 0) return;
    parts.push_back(std::move(part));
    if (std::ranges::find(materials, of.name) == materials.end()) materials.push_back(of.name);
  };
  for (const BodyKind kind : all_bodies)
    for (const Bar& b : m.body(kind).bars) look(b.material, to_string(kind) + "." + b.name);
  for (std::size_t i = 0; i < m.members.size(); ++i)
    look(m.members[i].material, m.plain_name({Ref::Kind::member, BodyKind::bed, static_cast<int>(i)}));
  for (std::size_t i = 0; i < m.panels.size(); ++i)
    look(m.panels[i].material, m.plain_name({Ref::Kind::panel, BodyKind::bed, static_cast<int>(i)}));
  const auto own = [&](const auto& cells) {
    for (const auto& cell : cells)
      if (std::string part = m.plain_name({Ref::Kind::own, BodyKind::bed, cell.part});
          std::ranges::find(parts, part) == parts.end())
        look(cell.material, std::move(part));
  };
  own(m.own.lines);
  own(m.own.quads);
  if (parts.empty()) return "";
  return "stress not checked (" + joined_names(parts) + "): give `yield` of material " + joined_names(materials);
}

std::vector<std::string> unchecked_joints(const Machine& m) {
  std::vector<std::string> out;
  const auto list = [&](JointKind kind, const std::string& why, auto& joints, auto unknown) {
    std::vector<std::string> names;
    for (const auto& j : joints)
      if (unknown(j)) names.push_back(j.name.empty() ? "unnamed" : j.name);
    if (!names.empty())
      out.push_back(std::string(info(kind).plural) + " not checked (" + joined_names(names) + "): " + why);
  };
  list(JointKind::post, "give `class`", m.posts, [](const Post& p) { return p.grade.empty() && !p.allowed_stress; });
  list(JointKind::cam, "give `radius` and `width`", m.cams,
       [](const Cam& c) { return std::isnan(c.radius) || std::isnan(c.width); });
  list(JointKind::hinge, "give `pin` and `bearing_length`", m.hinges,
       [](const Hinge& h) { return std::isnan(h.pin) || std::isnan(h.bearing_length); });
  list(JointKind::screw, "give `class`", m.screws, [](const Screws& s) { return s.grade.empty(); });
  return out;
}

} // namespace bedbow
