/// \file
/// Flat four-node shell, six dofs per node: MITC4 Mindlin bending and a membrane with drilling rotations that is
/// accurate in in-plane bending. Free functions; no mesh. Nodes counter-clockwise seen from the positive normal;
/// slightly warped quadrilaterals are projected on their mean plane with exact arms.
#pragma once

#include "solver/element/beam.h"

#include <Eigen/Core>

#include <array>
#include <vector>

namespace bedbow {

using Matrix24d = Eigen::Matrix<double, 24, 24>;
using Vector24d = Eigen::Matrix<double, 24, 1>;
using Corners = std::array<Eigen::Vector3d, 4>;

struct ShellData {
  double E = 0, nu = 0, thickness = 0, density = 0;
};

/// Stress resultants at a point of the mid-surface in the element's axes: membrane n [N/m] (xx yy xy),
/// bending m [N m/m] (xx yy xy; positive m_xx stretches the +z face), shear q [N/m] (xz yz).
struct ShellResultants {
  Eigen::Vector3d n, m;
  Eigen::Vector2d q;
};

/// Rows are the element's axes x, y, z (z the normal) in global axes.
Eigen::Matrix3d shell_axes(const Corners& corners);

/// Stiffness in global axes. \return 24 x 24, symmetric, rank 18; dofs (ux uy uz rx ry rz) node by node.
Matrix24d shell_stiffness(const Corners& corners, const ShellData& data);

/// Mass in global axes, with rotary inertia. \param lumped diagonal instead of consistent.
Matrix24d shell_mass(const Corners& corners, const ShellData& data, bool lumped = false);

/// Geometric stiffness in global axes from the membrane resultants at the four Gauss points (2 x 2, the order of
/// shell_gauss_resultants).
Matrix24d shell_geometric(const Corners& corners, const ShellData& data, const std::array<Eigen::Vector3d, 4>& n);

/// Nodal loads of a uniform traction per area, global axes [Pa].
Vector24d shell_load(const Corners& corners, const Eigen::Vector3d& traction);

/// Resultants at the 2 x 2 Gauss points. \param u 24 global displacements.
std::array<ShellResultants, 4> shell_gauss_resultants(const Corners& corners, const ShellData& data,
                                                      const Vector24d& u);

/// Resultants extrapolated to the four corners.
std::array<ShellResultants, 4> shell_corner_resultants(const Corners& corners, const ShellData& data,
                                                       const Vector24d& u);

} // namespace bedbow
