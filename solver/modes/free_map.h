/// \file
/// Parts without anchored unknowns. Statics anchors as many unknowns of a part as it has rigid-body modes and adds the
/// modes' amplitudes; for vibration a part keeps all its unknowns.
#pragma once

#include "solver/assembly/dof_map.h"

namespace bedbow {

/// Numbering of all unknowns, component after component.
struct FreeMap {
  DofMap map;                        ///< numbered without anchors; `rigid` of the components is empty
  std::vector<Eigen::Index> start;   ///< by component: its first unknown among all
  Eigen::Index size = 0;             ///< of all components
  std::vector<Eigen::Index> anchors; ///< unknowns that statics anchors
};

FreeMap make_free_map(const DofMap& map);

/// Rigid-body mode of a part as a vector of all unknowns. \param of (translation, rotation about the part's centre), as
/// a column of Substructure::rigid.
void add_rigid_movement(const Mesh& mesh, const FreeMap& free, std::size_t component, const Vector6d& of,
                        Eigen::Ref<Eigen::VectorXd> out);

/// Displacement (u, theta) of every node, axes of its frame.
std::vector<Vector6d> node_motions(const FreeMap& free, const Eigen::Ref<const Eigen::VectorXd>& unknowns);

} // namespace bedbow
