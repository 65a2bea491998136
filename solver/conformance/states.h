/// \file
/// Displacement states that an element must reproduce, and small assemblies of elements, for the conformance suite.
#pragma once

#include "solver/element/parameters.h"

#include <Eigen/Core>

#include <functional>
#include <vector>

namespace bedbow::conformance {

using Vector6 = Eigen::Matrix<double, 6, 1>;

/// An element's input with its example parameters.
ElementInput input_of(const ElementEntry& element, const Eigen::Matrix3Xd& corners);

/// Example value of a parameter; `otherwise` where it is not declared.
double example_of(const ElementEntry& element, const std::string& parameter, double otherwise);

/// Rigid-body mode k (three translations, then rotations about the origin's axes) of the corners. \return 6 n.
Eigen::VectorXd rigid(const Eigen::Matrix3Xd& corners, int k);

/// Number of constant states: 4 along a line, 6 over a surface.
int states(int dimension);

/// Displacement of constant state `which` at p in the x-y plane. Line along x: stretch, curvature about y and z, twist.
/// Surface: three membrane strains, three curvatures. All of unit size.
Vector6 constant_state(int dimension, int which, const Eigen::Vector3d& p);

/// Strain energy of a constant state per length or area, from the parameters by name. NaN where one that it needs is
/// not declared. Source: beam theory; Timoshenko & Woinowsky-Krieger 1959, art. 10 for the plate.
double energy_density(const ElementEntry& element, int which);

struct Patch {
  Eigen::Matrix3Xd nodes;
  std::vector<std::vector<int>> elements;
  std::vector<int> inner;
  double size; ///< length or area
};

/// Two uneven pieces of a line, or the five quadrilaterals of MacNeal & Harder 1985, fig. 1.
Patch patch_of(int dimension);

/// Sum over a patch of n x n matrices, node by node. \param matrix of one element, from its corners.
Eigen::MatrixXd patch_sum(const Patch& patch, const std::function<Eigen::MatrixXd(const Eigen::Matrix3Xd&)>& matrix);

/// Sum of the element matrices of a patch.
Eigen::MatrixXd patch_stiffness(const ElementEntry& element, const Patch& patch);

} // namespace bedbow::conformance
