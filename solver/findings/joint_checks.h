/// \file
/// Checks of a joint: pins and holes, cams, nuts, studs and screws against their allowable values. Values that the case
/// omits (a cam's radius, a class) omit a check. Theory: docs/theory/bearing.md.
#pragma once

#include "mesh/build/mesh.h"
#include "mesh/build/screw_faces.h"
#include "solver/findings/findings.h"
#include "solver/strength/stud.h"

#include <vector>

namespace bedbow {

/// Checks of one joint, with remarks.
struct JointChecks {
  std::vector<Check> checks;
  std::vector<std::string> remarks;
  /// Greatest utilisation; 0 where nothing is known.
  [[nodiscard]] double utilisation() const;
};

/// The material of a bar with the yield for its thickness (wall of a tube, lesser side of a flat).
/// \param ref anything else gives a material without a yield.
Material material_of_bar(const Machine& machine, const Mesh& mesh, const Ref& ref);

/// "proof load", "stud", "nut seat", "thread shear" and, where the stud is screwed into a bar, "tapped thread".
/// \param tension [N]; \param shear across the stud [N].
JointChecks check_post(const Machine& machine, const Mesh& mesh, const Post& post, double tension, double shear,
                       const StudEnds& ends);

/// "cam contact": Hertz line contact on the bar that the cam presses on. \param compression [N].
JointChecks check_cam(const Machine& machine, const Mesh& mesh, const Cam& cam, double compression);

/// "pin pressure", "pin shear", "pin bending", of an overhung pin "pin's seat in bed.web" (the part joined to the apron
/// holds the pin), and the expected wear of the hole. \param force across the pin [N].
/// \param swings whether the apron turns under that force.
JointChecks check_hinge(const Machine& machine, const Mesh& mesh, const Hinge& hinge, double force, bool swings);

/// The screw checks of solver/strength/screw.h for one screw of a row.
/// \param faces joined by the row, see screw_faces. \param shear, tension [N]: tension includes prying.
JointChecks check_screws(const Machine& machine, const Mesh& mesh, const Screws& screws, const ScrewFaces& faces,
                         double shear, double tension);

/// Values that a joint needs before all its parts can be checked: "cam left: give radius and width ...". One line each.
std::vector<std::string> unchecked_joints(const Machine& machine);

/// Bars, members, panels and parts of the user's mesh whose material has no yield, so that their stress is not judged:
/// "stress not checked (clamp.plate, ...): give `yield` of material putty"; empty where there are none.
std::string unchecked_stress(const Machine& machine);

} // namespace bedbow
