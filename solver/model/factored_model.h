/// \file
/// The parts of a machine, each factored once and condensed to its joints: every step, angle and load position is then
/// a small dense system.
#pragma once

#include "mesh/piece/registry.h"
#include "solver/assembly/assembly.h"
#include "solver/assembly/joint_springs.h"
#include "solver/model/loads.h"

#include <Eigen/Core>

#include <memory>
#include <string>
#include <vector>

namespace bedbow {

class SubstructureCache;

/// An internal mechanism of a part, independent of its joints: found while factoring.
struct SubstructureMechanism {
  std::string part; ///< component's name
  Eigen::Vector3d at = Eigen::Vector3d::Zero();
  int dof = 0; ///< 0..5
};

/// Factored components with the compliance of their functionals.
struct FactoredModel {
  std::vector<SymmetricMatrix> stiffness;                    ///< by component
  std::vector<std::shared_ptr<const Factorization>> factors; ///< by component
  std::vector<std::vector<int>> functionals_of;              ///< by component: indices of functionals
  Eigen::MatrixXd compliance;                                ///< nf x nf: p' K^-1 p
  Eigen::MatrixXd rigid;                                     ///< nf x r: functionals of the rigid-body modes
  std::vector<double> reach;                                 ///< nf: norm of its row of `rigid` without cancellation
  std::vector<Eigen::Index> rigid_start;                     ///< by component: first column in `rigid`
  std::vector<SubstructureMechanism> mechanisms;             ///< if not empty, nothing else is valid
  std::string solver;                                        ///< name of the linear solver used
  int unknowns = 0;
};

/// Assembles, factors and condenses with the solver in the machine's settings, by default "auto".
/// \param cache of factored parts; null: none.
/// Throws std::invalid_argument when there is no such solver.
FactoredModel factor_model(const Machine& machine, const Mesh& mesh, const DofMap& map, const ElementData& data,
                           const std::vector<DisplacementFunctional>& functionals,
                           const Registry<LinearSolverEntry>& solvers, SubstructureCache* cache = nullptr);

/// Stretch of a row per rigid-body mode. Where contributions cancel, as for a rod between two places of one part, it is
/// exactly zero, not rounding. \return r entries.
Eigen::RowVectorXd rigid_elongation(const FactoredModel& structure, const JointSpring& row);

/// Displacements of one step: by component the free unknowns, plus the rigid-body modes.
struct Displacements {
  std::vector<Eigen::VectorXd> elastic; ///< by component, free unknowns
  Eigen::VectorXd rigid_amplitudes;     ///< rigid-body modes
};

/// Displacement (u, theta) of every node, in the axes of its frame. \return by node.
std::vector<Vector6d> node_motions(const Mesh& mesh, const DofMap& map, const FactoredModel& s, const Displacements& d);

} // namespace bedbow
