/// \file
/// Clamp first, then bend from that state at each apron angle: one small system a step.
#pragma once

#include "solver/contact.h"
#include "solver/status.h"
#include "solver/structure.h"

namespace bedbow {

/// Everything that stays the same over the steps.
struct Model {
  const Machine& machine;
  Mesh mesh;
  DofMap map;
  ElementData data;
  RowSet rows;
  Structure structure;
};

struct StepSolution {
  std::string name;
  double angle = 0;
  bool bending = false;
  double sheet_lift = 0; ///< upward force per length that the bent sheet puts on the nose by its own lever [N/m]
  StepLoads loads;
  std::vector<Row> rows;
  Eigen::VectorXd force;   ///< by row, tension positive
  Eigen::VectorXd stretch; ///< by row
  std::vector<char> active;
  Displacements displacements;
  std::vector<Vector6d> motion; ///< by node, axes of its frame
  std::vector<Vector12d> ends;  ///< by beam element: its end displacements in local axes, releases recovered
  int iterations = 0;
};

struct StepsOutcome {
  using Status = bedbow::Status;
  Status status = Status::ok;
  std::string trouble; ///< what moves and where, what did not settle, or what is displaced too far
  std::vector<std::string> history;
  std::vector<StepSolution> steps;
};

/// Angles of the bend steps: those the case names, or 0, half and wanted.
std::vector<double> bend_angles(const Machine& machine);

/// Solves all steps; out_of_range where displacement_guard.h finds one too far. \param sheet line loads of the bent
/// sheet, where there is one.
StepsOutcome solve_steps(const Model& model, const std::optional<SheetLoads>& sheet);

} // namespace bedbow
