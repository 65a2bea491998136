/// \file
/// A straight row of beam elements with dense matrices, for buckling loads of single members.
#pragma once

#include "solver/element/beam.h"

#include <vector>

namespace bedbow::verification {

/// A member along x cut into equal elements; nodes 0 .. elements.
struct BeamColumn {
  BeamData data;
  double length = 1;
  int elements = 8;
  std::vector<int> held;     ///< dofs 6 node + component held at zero
  Eigen::MatrixXd stiffness; ///< filled by the constructor
  Eigen::MatrixXd geometric; ///< likewise zero; see add_state
  BeamColumn(const BeamData& beam, double whole_length, int count);

  [[nodiscard]] int dof(int node, int component) const { return 6 * node + component; }
  [[nodiscard]] int last() const { return elements; }
  void hold(int node, std::initializer_list<int> components);
  /// Solves under nodal loads and adds the geometric stiffness of what results.
  void add_state(const Eigen::VectorXd& load);
  /// Lowest positive factor of (K + factor K_g) u = 0, dense. Throws std::runtime_error when there is none.
  [[nodiscard]] double buckling_factor() const;
};

} // namespace bedbow::verification
