/// \file
/// Recovery from nodal displacements: displacement of any place and section, forces inside elements.
#pragma once

#include "solver/element/beam_field.h"
#include "solver/model/steps.h"

#include <span>

namespace bedbow {

/// A displacement (u, theta) in other axes.
Vector6d turned(const Eigen::Matrix3d& turn, const Vector6d& motion);

/// Displacement (u, theta) of a place in the axes of its frame. \param motion by node.
Vector6d frame_motion(const std::vector<Vector6d>& motion, const Place& place);

/// Displacement (u, theta) of a place, global axes of the step (the apron's turned by its angle).
Vector6d place_motion(const StepSolution& step, const Place& place);

/// Forces of the springs of a screw, which are part of the stiffness matrix, from its elongation: by direction in the
/// joint's own axes, tension positive [N, N m].
std::array<double, 6> screw_springs(const StepSolution& step, const Joint& joint);

/// Local end displacements of all beam elements, released ends recovered, from the step's nodal displacements.
std::vector<Vector12d> end_displacements(const Model& model, const StepSolution& step);

/// Section forces at s in [0, 1] of a beam element.
SectionForces element_forces(const Model& model, const StepSolution& step, int element, double s);

/// Section forces at a distance along a beam element from where they are known, by statics alone.
/// \param load of the element, local axes. \param further [m]
SectionForces forces_further(const BeamData& data, const BeamLineLoad& load, const SectionForces& known,
                             double further);

/// Displacement (u, theta) and forces along a beam element, in its own axes, between its ends and under its load. The
/// built-in shape is also used for elements with another formulation.
BeamField element_field(const Model& model, const StepSolution& step, int element);

/// Displacement of the point (y, z) of a bar's section at x, frame axes; between stations with the element's own shape
/// and the load's particular solution. Plate bars: interpolated between nodes. x is limited to the bar.
Vector6d section_motion(const Model& model, const StepSolution& step, const Ref& bar, double x, double y, double z);

/// The same at many places along the bar. \param x fastest in ascending order.
std::vector<Vector6d> section_motions(const Model& model, const StepSolution& step, const Ref& bar,
                                      std::span<const double> x, double y, double z);

} // namespace bedbow
