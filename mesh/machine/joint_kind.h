/// \file
/// The kinds of joints, and what the case file, results, tables and drawings call each of them and do with it. Whoever
/// treats all kinds alike loops over this table.
#pragma once

#include "mesh/piece/quantity.h"

#include <array>
#include <cstddef>
#include <string>

namespace bedbow {

/// Those that results list come first, in the order of results. `touch`: nose and bed beyond the sheet, once its
/// thickness is used up. `hold`: a plain hold that needs a rigid arm. `rod`: a member that only pulls. `member_end`: an
/// end of a member that lies on a panel or the own mesh between its nodes. `pad`: the sheet between nose and bed.
/// `friction`: what it passes sideways there. `pressure`: bars that lie on each other.
enum class JointKind {
  post,
  cam,
  hinge,
  screw,
  support,
  tie,
  handle,
  touch,
  hold,
  rod,
  member_end,
  pad,
  friction,
  pressure,
  weld
};

struct JointKindInfo {
  JointKind kind;
  const char* key;                     ///< its table in the case file; one of them in results, tables and drawings
  const char* plural = nullptr;        ///< list in a step of results.json; nullptr: in none of its own
  const char* value = nullptr;         ///< what JointResult::value is, in shop words
  bool part = false;                   ///< a part of the machine that tables, peaks and reports list
  bool arrow = false;                  ///< its force is drawn
  Quantity quantity = Quantity::force; ///< of its greatest load: of a moment, `value` is the hand's force
};

/// In the order of JointKind.
inline constexpr std::array joint_kinds{
    JointKindInfo{JointKind::post, "post", "posts", "tension", true, true},
    JointKindInfo{JointKind::cam, "cam", "cams", "push", true, true},
    JointKindInfo{JointKind::hinge, "hinge", "hinges", "force on the pin", true, true},
    JointKindInfo{JointKind::screw, "screws", "screws", "shear of the worst screw", true, false},
    JointKindInfo{JointKind::support, "support", "supports", "force", true, true},
    JointKindInfo{JointKind::tie, "tie", "ties", "force", true, true},
    JointKindInfo{JointKind::handle, "handle", "handles", "force of the hand", true, false, Quantity::moment},
    JointKindInfo{JointKind::touch, "touch", "touches", "force", false, true},
    JointKindInfo{JointKind::hold, "hold"},
    JointKindInfo{JointKind::rod, "rod"},
    JointKindInfo{JointKind::member_end, "member end"},
    JointKindInfo{JointKind::pad, "pad"},
    JointKindInfo{JointKind::friction, "friction"},
    JointKindInfo{JointKind::pressure, "pressure"},
    JointKindInfo{JointKind::weld, "weld"}};

static_assert(
    [] {
      for (std::size_t i = 0; i < joint_kinds.size(); ++i)
        if (joint_kinds[i].kind != static_cast<JointKind>(i)) return false;
      return joint_kinds.back().kind == JointKind::weld;
    }(),
    "one row a kind, in the order of the enumeration");

constexpr const JointKindInfo& info(JointKind kind) {
  return joint_kinds[static_cast<std::size_t>(kind)];
}

/// "post left end" of kind "post" and name "left end"; a name that says its kind already is left alone.
inline std::string with_kind(const std::string& kind, const std::string& name) {
  return name.starts_with(kind) ? name : kind + " " + name;
}

/// Name of the joint of that number, where the case gives none: "post 2".
inline std::string numbered(JointKind kind, std::size_t index) {
  return std::string(info(kind).key) + " " + std::to_string(index + 1);
}

} // namespace bedbow
