/// \file
/// Invented findings for the writers' tests: round numbers that show at once where a value went. No mechanics in them.
#pragma once

#include "mesh/machine/machine.h"
#include "solver/findings/findings.h"

namespace bedbow::test {

/// b x h rectangle: constants in closed form, shear stress of the parabola, stress points at corners and mid-sides.
Section rectangle_section(double b, double h);
/// Square tube: outside `side`, wall `wall`; outline with a hole. Stress points at the outer corners, without shear.
Section tube_section(double side, double wall);
/// Equal angle with legs along +y and +z from its heel at (0, 0): a hollow (non-convex) outline.
Section angle_section(double leg, double wall);

/// A beam field straight along x at (y, z), `stations` from x0 to x1, moved by 1 mm downwards and turned by 0.01 rad
/// about x, with N = 1000 N and My = 100 N m everywhere. Body and name as given.
BarField bar_field(const std::string& name, BodyKind body, Section section, double x0, double x1, double y, double z,
                   int stations = 5);
/// A flat plate field in the plane z = height, 2 x 1 quads over 0.2 m x 0.1 m, moved by 2 mm along its normal; von
/// Mises 30, 10, 20 MPa at top, middle, bottom.
ShellField shell_field(const std::string& name, double height);

/// Three bodies of one bar each, two posts, a cam, two hinges, a screw row; clamp step and a bend at 90 deg, which is
/// the worst and breaks the limit on the angle spread.
Machine machine();
Findings findings();
/// A case without a sheet: members only, one step "load".
Findings frame_findings();

} // namespace bedbow::test
