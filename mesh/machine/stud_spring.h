/// \file
/// The stud of a post as a spring, along and across. Theory and sources: docs/theory/joints.md, Posts.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/piece/fastener.h"

namespace bedbow {

/// The post's thread; of a plain diameter one without pitch, all of whose areas are the full circle.
Thread stud_thread(const Post& post);

/// Diameter of the section that stretches and bends, the circle of the stress area [m].
double stud_diameter(const Post& post);

/// Tension per elongation of the stud with its nuts and the threads engaged in them [N/m].
double stud_stiffness(const Post& post);

/// Force across the stud per sideways movement of its ends [N/m]: 12 E I / L^3 fixed at both ends; 3 E I / L^3 where a
/// spherical seat lets the nut's end turn.
double stud_shear_stiffness(const Post& post);

} // namespace bedbow
