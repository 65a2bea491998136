/// \file
/// Rigid-body modes and mechanisms in a builder's words.
#pragma once

#include "solver/model/steps.h"

namespace bedbow {

/// "clamp can slide along x", "apron can turn about x", from rigid-body modes of the parts (r entries).
/// \param can false: "clamp slides along x".
std::string describe_movement(const Model& model, const Eigen::VectorXd& rigid_movements, bool can = true);

/// "clamp turns about x" or "clamp slides along z": the single most characteristic motion. \param motion (translation,
/// rotation) of the part's centre. \param can "clamp can turn about x".
std::string describe_rigid(const Substructure& part, const Vector6d& motion, bool can = false);

/// "bed.web at (120, 8, -50) mm can turn about y inside itself", from a part that failed while factoring.
std::string describe_mechanism(const SubstructureMechanism& mechanism);

} // namespace bedbow
