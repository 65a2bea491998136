/// \file
/// A functional is one displacement of one place as a linear form of the unknowns: elongation of joints, readings of
/// dials.
#pragma once

#include "solver/assembly/dof_map.h"

#include <vector>

namespace bedbow {

/// value = sum coefficient * unknown + rigid . (translation, rotation about the component's centre)
struct DisplacementFunctional {
  int component = -1;                        ///< -1: ground, always 0
  std::vector<std::pair<int, double>> terms; ///< (unknown, coefficient)
  Vector6d rigid = Vector6d::Zero();
};

/// Elastic part of a functional: its terms on a vector of the component's unknowns.
double evaluate(const DisplacementFunctional& functional, const Eigen::Ref<const Eigen::VectorXd>& unknowns);

/// Translation of the place along `direction`, in the axes of the place's own frame.
DisplacementFunctional translation_of(const Mesh& mesh, const DofMap& map, const Place& place,
                                      const Eigen::Vector3d& direction);
/// Rotation of the place about `direction`, likewise.
DisplacementFunctional rotation_of(const Mesh& mesh, const DofMap& map, const Place& place,
                                   const Eigen::Vector3d& direction);

} // namespace bedbow
