/// \file
/// An extensible element formulation: a small table and a few pure functions. One
/// conformance suite (solver/conformance/) runs over every registered one.
#pragma once

#include "mesh/piece/registry.h"

#include <Eigen/Core>

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bedbow {

struct ElementParameter {
  std::string name, unit, meaning;
  double example; ///< a sensible value, SI; the conformance suite runs with it
};

/// Input of an element's matrices.
struct ElementInput {
  Eigen::Matrix3Xd corners;       ///< 3 x nodes, global axes [m]
  std::vector<double> parameters; ///< in the order declared
  /// Rows: along, width, height of the section. Default: height towards z, or y for an upright line. Surfaces have
  /// their own.
  std::optional<Eigen::Matrix3d> axes = std::nullopt;
};

struct ElementEntry {
  std::string name, description, source;
  int dimension = 1; ///< 1: along a line, 2: over a surface
  int nodes = 2;
  int dofs_per_node = 6; ///< ux uy uz rx ry rz, global axes
  std::vector<ElementParameter> parameters;
  std::vector<Eigen::Matrix3Xd> examples; ///< shapes for the conformance suite

  std::function<Eigen::MatrixXd(const ElementInput&)> stiffness;         ///< n x n, symmetric
  std::function<Eigen::MatrixXd(const ElementInput&, bool lumped)> mass; ///< n x n, symmetric, or empty
  /// n x n, symmetric, or empty. \param state along a line: N Vy Vz T My Mz at either end (12 values, the element's
  /// axes, T about the shear centre); over a surface: nxx nyy nxy mxx myy mxy qx qy at the 2 x 2 Gauss points, in the
  /// order of the nodes (32 values).
  std::function<Eigen::MatrixXd(const ElementInput&, std::span<const double> state)> geometric;
  /// Nodal loads (n) equivalent to a uniform load, minus the fixed-end actions; or empty. \param load global axes;
  /// along a line: force and moment per length, on the centroid (6 values); over a surface: force per area (3 values).
  std::function<Eigen::VectorXd(const ElementInput&, std::span<const double> load)> load;

  std::string origin = "built in";
};

/// Adds "beam" and "shell4". Throws std::invalid_argument when a name is taken.
void builtin_elements(Registry<ElementEntry>& elements);

} // namespace bedbow
