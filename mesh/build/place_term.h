/// \file
/// A node's share in the displacement of a place.
#pragma once

#include <Eigen/Core>

namespace bedbow {

using Matrix6d = Eigen::Matrix<double, 6, 6>;

/// Displacement (u, theta) of a point at `arm` from a point that it follows rigidly: carry * (u, theta) of that point.
inline Matrix6d carry(const Eigen::Vector3d& arm) {
  Matrix6d t = Matrix6d::Identity();
  t(0, 4) = arm.z();
  t(0, 5) = -arm.y();
  t(1, 3) = -arm.z();
  t(1, 5) = arm.x();
  t(2, 3) = arm.y();
  t(2, 4) = -arm.x();
  return t;
}

/// One node's share of a place: its displacement (u, theta) is the sum of movement * (u, theta) of the nodes, or of
/// their amplitudes.
struct PlaceTerm {
  int node = -1;
  double weight = 0; ///< share of a force at the place that the node takes; 0 of amplitudes
  Matrix6d movement = Matrix6d::Zero();

  /// A share of a place that stands on a rigid arm from the node.
  static PlaceTerm on_arm(int node, double weight, const Eigen::Vector3d& arm) {
    return {node, weight, weight * carry(arm)};
  }
  /// Weight times the arm from the node to the place [m].
  [[nodiscard]] Eigen::Vector3d lever() const { return {movement(1, 5), movement(2, 3), movement(0, 4)}; }
};

} // namespace bedbow
