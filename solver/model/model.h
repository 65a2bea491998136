/// \file
/// From a Machine to a Model ready to be solved, and the solution of one step.
#pragma once

#include "solver/contact/contact.h"
#include "solver/model/factored_model.h"
#include "solver/registry/registries.h"

namespace bedbow {

/// Everything that stays the same over the steps. Refers to the machine: it must outlive the model.
struct Model {
  const Machine& machine;
  Mesh mesh;
  DofMap map;
  ElementData data;
  JointSprings rows;
  FactoredModel factored;
};

/// How the friction of the sheet at nose and bed is taken: none, by its coefficient, or as if it never slid.
enum class SheetFriction { sliding, by_coefficient, sticking };

/// One solved step.
struct StepSolution {
  std::string name;
  double angle = 0;
  bool bending = false;
  double sheet_lift = 0; ///< upward force per length that the bent sheet puts on the nose by its own lever [N/m]
  double sheet_grip = 0; ///< likewise downward on the bed [N/m]
  SheetFriction friction = SheetFriction::sliding; ///< as solved
  bool friction_settled = true;                    ///< whether its iteration did; solved as sliding where not
  StepLoads loads;
  std::vector<JointSpring> rows;
  Eigen::VectorXd force;      ///< by row, tension positive
  Eigen::VectorXd elongation; ///< by row
  std::vector<char> active;
  Displacements displacements;
  std::vector<Vector6d> motion; ///< by node, axes of its frame
  std::vector<Vector12d> ends;  ///< by beam element: its end displacements in local axes, releases recovered
  int iterations = 0;
};

/// Meshes, numbers, assembles, factors and condenses. A part with an internal mechanism is listed in
/// Model::structure.mechanisms. Throws std::invalid_argument for inconsistent input.
Model make_model(const Machine& machine, const Registries& registries);

/// The same from an existing mesh (make_mesh), possibly with other joints. \param cache of parts; null: none.
Model make_model(const Machine& machine, const Registries& registries, Mesh mesh, SubstructureCache* cache = nullptr);

/// Line loads of the machine's sheet by its moment law. Nothing where there is no sheet.
std::optional<SheetLoads> sheet_loads_of(const Machine& machine, const Registries& registries);

} // namespace bedbow
