#include "mesh/check/validate.h"

#include "mesh/check/validate_parts.h"

#include <cstdio>

namespace bedbow {

namespace {

void validate_whole(Validator& v) {
  const Machine& m = v.machine;
  bool bars = false;
  // A body without bars has already been reported.
  for (const Body& body : m.bodies) bars = bars || body.present() || body.pos.line > 0;
  const bool own = m.own.present() || m.own_pos.line > 0;
  if (!bars && m.members.empty() && m.panels.empty() && !own)
    v.error({1, 1}, "",
            "there is nothing to solve: a case needs at least a [bed], a [[member]], a [[panel]] or a [mesh]");
  if (m.solve.dimension == 2 && (!m.members.empty() || !m.panels.empty() || own))
    v.warning({}, "solve.dimension",
              "members, panels and meshes outside the x-z plane are ignored unless dimension = 3");
}

/// Names of one list that occur twice.
template <class Item> void validate_names(Validator& v, const std::vector<Item>& list, const std::string& kind) {
  for (std::size_t i = 0; i < list.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      if (list[i].name.empty() || list[i].name != list[j].name) continue;
      v.error(list[i].pos, kind + "." + list[i].name,
              "the name is already used in line " + std::to_string(list[j].pos.line) + "; choose another");
      break;
    }
}

void validate_all_names(Validator& v) {
  const Machine& m = v.machine;
  for (const Body& body : m.bodies) validate_names(v, body.bars, to_string(body.kind) + ".bar");
  m.each_joint_list([&](JointKind kind, const auto& list) { validate_names(v, list, info(kind).key); });
  validate_names(v, m.members, "member");
  validate_names(v, m.panels, "panel");
  validate_names(v, m.dials, "dial");
  for (const Panel& panel : m.panels)
    for (const Member& member : m.members)
      if (!panel.name.empty() && panel.name == member.name)
        v.error(panel.pos, "panel." + panel.name, "a member has the same name; give the panel another");
}

} // namespace

std::string in_mm(double length) {
  char text[40];
  std::snprintf(text, sizeof text, "%.6g mm", length * 1000);
  return text;
}

std::string place_in_mm(const Eigen::Vector3d& at) {
  return "[" + in_mm(at.x()) + ", " + in_mm(at.y()) + ", " + in_mm(at.z()) + "]";
}

std::vector<Problem> validate(const Machine& machine, const Registry<ShapeEntry>& shapes,
                              const Springback& springback) {
  Validator v{machine, shapes, {}, {}};
  for (const Body& body : machine.bodies)
    for (const Bar& bar : body.bars) v.boxes[static_cast<std::size_t>(body.kind)].push_back(bar_box(bar, shapes));
  validate_whole(v);
  validate_all_names(v);
  validate_bodies(v);
  validate_sheet(v);
  validate_swing(v, springback);
  validate_joints(v);
  validate_seats(v);
  validate_structure(v);
  validate_meetings(v);
  validate_user_mesh(v);
  return std::move(v.problems);
}

} // namespace bedbow
