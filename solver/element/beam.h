/// \file
/// Two-node shear-flexible (Timoshenko) beam, exact for constant sections: stiffness, consistent loads, recovery with
/// the load's own particular solution, mass, geometric stiffness. Free functions in the beam's own axes; no mesh.
///
/// Local axes: x along the beam, y and z the section's width and height. Nodes lie on the centroid line. Twelve dofs:
/// (ux uy uz rx ry rz) at node 1, then node 2. Sections may be unsymmetric (Iyz) with the shear centre off the
/// centroid: bending about the centroid, shear and torsion about the shear centre.
#pragma once

#include "mesh/piece/section.h"

#include <Eigen/Core>

#include <array>

namespace bedbow {

using Vector6d = Eigen::Matrix<double, 6, 1>;
using Vector12d = Eigen::Matrix<double, 12, 1>;
using Matrix6d = Eigen::Matrix<double, 6, 6>;
using Matrix12d = Eigen::Matrix<double, 12, 12>;
using Matrix6x12d = Eigen::Matrix<double, 6, 12>;

/// Constants of a beam element besides its length. An infinite shear area means no shear flexibility; A, J, Iyy,
/// Izz, Ay, Az must be above zero.
struct BeamData {
  double E = 0, G = 0, density = 0;
  SectionProperties section;
};

/// Uniform load along the element, per length, acting on the centroid line, local axes.
struct BeamLineLoad {
  Eigen::Vector3d force = Eigen::Vector3d::Zero();  ///< [N/m]
  Eigen::Vector3d moment = Eigen::Vector3d::Zero(); ///< [N m/m]
};

/// Stiffness. \param length [m] > 0. \return 12 x 12, symmetric, rank 6. Source: Przemieniecki 1968, ch. 5, with
/// shear-flexible cubics; the shear centre enters by an exact transformation (docs/theory/beams.md).
/// Throws std::invalid_argument unless length > 0, as all functions here do.
Matrix12d beam_stiffness(const BeamData& data, double length);

/// The same in global axes, faster than rotating the local one. \param axes rows: local x, y, z in global axes.
Matrix12d beam_stiffness_global(const BeamData& data, double length, const Eigen::Matrix3d& axes);

/// Any 12 x 12 or 12-vector between local and global axes. \param axes rows: local x, y, z in global axes.
Matrix12d beam_to_global(const Matrix12d& local, const Eigen::Matrix3d& axes);
Vector12d beam_to_global(const Vector12d& local, const Eigen::Matrix3d& axes);
Vector12d beam_to_local(const Vector12d& global, const Eigen::Matrix3d& axes);

/// Shape functions: displacement (u, theta) of the centroid at s in [0, 1] per nodal displacement, of the exact
/// unloaded solution. \return 6 x 12.
Matrix6x12d beam_shape(const BeamData& data, double length, double s);

/// Nodal loads equivalent to a uniform line load: minus the fixed-end actions, exact.
Vector12d beam_load(const BeamData& data, double length, const BeamLineLoad& load);

/// Displacement (u, theta) of the centroid at s = position / length in [0, 1], nodal part plus the particular solution.
Vector6d beam_motion(const BeamData& data, double length, const Vector12d& u, const BeamLineLoad& load, double s);

/// Section forces at s in [0, 1], on the +x face of the cut.
SectionForces beam_forces(const BeamData& data, double length, const Vector12d& u, const BeamLineLoad& load, double s);

/// Mass matrix about the centroid axes with rotary inertia. \param lumped diagonal blocks instead of consistent.
Matrix12d beam_mass(const BeamData& data, double length, bool lumped = false);

/// Geometric stiffness of the state with the given section forces at its ends (linear between them; moments with the
/// parabola of a uniform load), for linear buckling including lateral-torsional: axial force with Wagner's term, shear
/// and moments, torque. Rotations are components of the rotation vector, so that end moments are semitangential and
/// members may meet at any angle; moments made by forces on arms, and loads above or below the axis, have a separate
/// term, see beam_load_height. Not included: the bending moments' share of Wagner's term in sections without two axes
/// of symmetry. \return 12 x 12, symmetric; the buckling problem is (K + factor K_g) u = 0.
/// Source: docs/theory/buckling.md.
Matrix12d beam_geometric(const BeamData& data, double length, const SectionForces& at_1, const SectionForces& at_2);

/// Geometric stiffness of a force of fixed direction at the end of a rigid arm: added to the rotations of the node that
/// carries the arm. (F.a) I - (F a' + a F') / 2.
/// \param force [N]. \param arm from the node to the point of attack [m]. \return 3 x 3, in the axes of both.
Eigen::Matrix3d beam_load_height(const Eigen::Vector3d& force, const Eigen::Vector3d& arm);

/// An element with released dofs at its ends: rows and columns of the released dofs are zero.
struct Released {
  Matrix12d stiffness;
  Vector12d load;
  int free_dof = -1; ///< first released dof without restraint (the element is a mechanism); -1: none
};

/// Condenses released dofs out of stiffness and load. \param released local dofs (12), true: released.
Released beam_release(const Matrix12d& stiffness, const Vector12d& load, const std::array<bool, 12>& released);

/// Full local displacements of a beam with releases: the released dofs follow from the kept ones and the load.
/// \param u local; entries of released dofs are ignored. A dof without restraint is returned as 0.
Vector12d beam_release_recover(const Matrix12d& stiffness, const Vector12d& load, const std::array<bool, 12>& released,
                               const Vector12d& u);

} // namespace bedbow
