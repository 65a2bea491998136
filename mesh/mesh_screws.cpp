#include "mesh/fastener_stiffness.h"
#include "mesh/mesh_builder.h"
#include "mesh/places.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow::mesher {

namespace {

constexpr double screw_E = 205e9; // alloy steel; common practice, no source

/// Which way the screws of a row go, and what they clamp.
struct Interface {
  int normal = 2;           ///< 1: bars side by side along y; 2: one above the other along z
  bool swapped = false;     ///< the first of the two lies above (behind) the other
  double thickness[2] = {}; ///< of either bar along the normal [m]
  double width = 0;         ///< of the faces in contact, across the normal [m]
};

Interface interface_of(const Builder& b, const std::array<Ref, 2>& joins) {
  std::array<SectionBox, 2> box;
  for (std::size_t i = 0; i < 2; ++i)
    box[i] = section_box(b.machine.bar(joins[i]), b.mesh.sections[layout_of(b.mesh, joins[i]).section]);
  const Eigen::Vector2d overlap = box[0].upper.cwiseMin(box[1].upper) - box[0].lower.cwiseMax(box[1].lower);
  Interface out;
  out.normal = overlap[0] < overlap[1] ? 1 : 2; // bars overlap least across their common face
  const int k = out.normal - 1;
  out.swapped = box[0].lower[k] + box[0].upper[k] > box[1].lower[k] + box[1].upper[k];
  for (std::size_t i = 0; i < 2; ++i) out.thickness[i] = box[i].upper[k] - box[i].lower[k];
  out.width = std::max(overlap[1 - k], 0.0);
  return out;
}

} // namespace

void mesh_screws(Builder& b) {
  for (std::size_t row = 0; row < b.machine.screws.size(); ++row) {
    const Screws& s = b.machine.screws[row];
    const Interface face = interface_of(b, s.joins);
    const double E1 = b.material(b.machine.bar(s.joins[0]).material).E;
    const double E2 = b.material(b.machine.bar(s.joins[1]).material).E;
    // Where the case gives none, a bolted metal joint in single shear after Huth.
    const double shear = s.shear_stiffness.value_or(
        1 / huth_flexibility({face.thickness[0], E1, face.thickness[1], E2, s.diameter, screw_E}));
    // Across the joint the preloaded faces work both ways. They are as stiff as the column of bar material that the
    // screw clamps, taken as a ring of three diameters: stiff enough that only the shear matters.
    const double d = s.diameter;
    const double column = std::numbers::pi / 4 * (9 - 1) * d * d;
    const double normal = 1 / (face.thickness[0] / (2 * E1 * column) + face.thickness[1] / (2 * E2 * column));
    for (std::size_t i = 0; i < s.x.size(); ++i) {
      GivenPoint given = s.at;
      given.x() = s.x[i];
      const Eigen::Vector3d at = complete_place(b.machine, b.mesh, s.joins, given);
      Joint j;
      j.kind = JointKind::screw;
      j.index = static_cast<int>(row);
      j.part = static_cast<int>(i);
      j.name = s.name.empty() ? "screws " + std::to_string(row + 1) : s.name;
      j.swapped = face.swapped; // a is the lower: then stretch across the joint pulls the screw
      j.a = place_on_bar(b.machine, b.mesh, s.joins[face.swapped ? 1 : 0], at);
      j.b = place_on_bar(b.machine, b.mesh, s.joins[face.swapped ? 0 : 1], at);
      j.normal = face.normal;
      j.stiffness = {shear, shear, shear, 0, 0, 0};
      j.stiffness[j.normal] = normal;
      // The faces also stop the bars rolling on each other: pressure spread over the width in contact.
      j.stiffness[rx] = normal * std::max(face.width * face.width, d * d) / 12;
      b.mesh.joints.push_back(std::move(j));
    }
  }
}

} // namespace bedbow::mesher
