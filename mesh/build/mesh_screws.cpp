#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"
#include "mesh/build/screw_faces.h"
#include "mesh/build/seats.h"
#include "mesh/piece/fastener.h"
#include "mesh/piece/fastener_stiffness.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bedbow::mesher {

void mesh_screws(Builder& b) {
  for (std::size_t row = 0; row < b.machine.screws.size(); ++row) {
    const Screws& s = b.machine.screws[row];
    const ScrewFaces face = screw_faces(b.machine, b.mesh, s);
    const double thick1 = face.side[0].thickness(), thick2 = face.side[1].thickness();
    const double E1 = b.material(face.side[0].material).E;
    const double E2 = b.material(face.side[1].material).E;
    const bool on_mesh = s.joins[0].kind == Ref::Kind::own || s.joins[1].kind == Ref::Kind::own;
    // Default: a bolted metal joint in single shear after Huth.
    const double shear =
        s.shear_stiffness.value_or(1 / huth_flexibility({thick1, E1, thick2, E2, s.diameter, fastener_E}));
    // Across the joint the preloaded faces act in both directions. They are as stiff as the column of bar material that
    // the screw clamps, taken as a ring of three diameters: stiff enough that only the shear matters.
    const double d = s.diameter;
    const double column = std::numbers::pi / 4 * (9 - 1) * d * d;
    const double normal = 1 / (thick1 / (2 * E1 * column) + thick2 / (2 * E2 * column));
    for (std::size_t i = 0; i < s.x.size(); ++i) {
      GivenPoint given = s.at;
      given.x() = s.x[i];
      // Two bars meet in both y and z; a bar and a plate across their faces only.
      if (on_mesh && !std::isfinite(given[face.normal])) given[face.normal] = face.meeting;
      const Eigen::Vector3d at = complete_place(b.machine, b.mesh, s.joins, given);
      Joint j;
      j.kind = JointKind::screw;
      j.index = static_cast<int>(row);
      j.part = static_cast<int>(i);
      j.name = s.name.empty() ? "screws " + std::to_string(row + 1) : s.name;
      j.swapped = face.swapped; // a is the lower: then stretch across the joint pulls the screw
      j.a = side_of(b, s, JointKind::screw, face.swapped ? 1 : 0, at);
      j.b = side_of(b, s, JointKind::screw, face.swapped ? 0 : 1, at);
      j.normal = face.normal;
      j.stiffness = {shear, shear, shear, 0, 0, 0};
      j.stiffness[j.normal] = normal;
      // The faces also keep the bars from rolling on each other: pressure spread over the width in contact.
      j.stiffness[rx] = normal * std::max(face.width * face.width, d * d) / 12;
      b.mesh.joints.push_back(std::move(j));
    }
  }
}

} // namespace bedbow::mesher
