/// \file
/// State shared by the parts of validate(). Only they use this.
#pragma once

#include "mesh/check/part_keys.h"
#include "mesh/machine/bar_box.h"
#include "mesh/machine/problem.h"
#include "mesh/machine/springback.h"

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bedbow {

struct Validator {
  const Machine& machine;
  const Registry<ShapeEntry>& shapes;
  std::array<std::vector<std::optional<BarBox>>, 3> boxes; ///< by body and bar
  std::vector<Problem> problems;

  void error(SourcePos pos, std::string key, std::string text) {
    problems.push_back({Severity::error, pos, std::move(key), std::move(text)});
  }
  void warning(SourcePos pos, std::string key, std::string text) {
    problems.push_back({Severity::warning, pos, std::move(key), std::move(text)});
  }
  [[nodiscard]] const std::optional<BarBox>& box(const Ref& r) const {
    return boxes[static_cast<std::size_t>(r.body)][static_cast<std::size_t>(r.index)];
  }
};

/// Lengths closer than this are the same [m].
inline constexpr double same_length = 1e-9;

/// "12.5 mm".
std::string in_mm(double length);
/// "[x, y, z]" [mm] of a place [m].
std::string place_in_mm(const Eigen::Vector3d& at);

void validate_bodies(Validator& v); // validate_bodies.cpp
void validate_sheet(Validator& v);  // validate_sheet.cpp: sheet, nose, fingers
// validate_swing.cpp: set-back, and collisions in the swing
void validate_swing(Validator& v, const Springback& springback);
void validate_joints(Validator& v);    // validate_joints.cpp
void validate_seats(Validator& v);     // validate_seats.cpp
void validate_structure(Validator& v); // validate_structure.cpp: members, panels, holds, loads, dials
void validate_meetings(Validator& v);  // validate_meetings.cpp: members and panels that touch and are not joined
void validate_user_mesh(Validator& v); // validate_user_mesh.cpp: the user's mesh

} // namespace bedbow
