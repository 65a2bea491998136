/// \file
/// Membrane of the four-node shell, three dofs a node (u, v, drilling rotation), by the free formulation of Bergan and
/// Nygard (Int. J. Numer. Methods Eng. 20, 1984, 643-663): a basic stiffness from lumped constant stress, which passes
/// the patch test whatever the shape, and a higher-order one of exact stress fields. See docs/theory/plates.md.
#pragma once

#include "solver/element/shell4_frame.h"

namespace bedbow::shell {

/// Matrices of one element's membrane. Dofs (u v rz) node by node; stresses (xx yy xy).
struct Membrane {
  double E, nu, thickness;
  double scale;         ///< length that makes coordinates dimensionless [m]
  double mean[3][12];   ///< mean strain per nodal displacement
  double higher[12][6]; ///< the six combinations of nodal displacements that vanish for constant strain and rigid-body
                        ///< modes
  double fields[8][8];  ///< Cholesky factor of the fields' energies
  double reduced[8][6]; ///< fields^-1 * (the combinations of the fields)'
  double condensed[6][6]; ///< Cholesky factor of the combinations' compliance
  double field_mean[8][3];
};
Membrane make_membrane(const Quad& quad, const ShellData& data);

/// Adds to the element's stiffness (24 x 24, element's axes).
void add_membrane_stiffness(const Membrane& membrane, double area, Matrix24d& stiffness);

/// Membrane resultants [N/m] at the 2 x 2 Gauss points. \param u local displacements.
std::array<Eigen::Vector3d, 4> membrane_resultants(const Membrane& membrane, const Quad& quad, const Vector24d& u);

} // namespace bedbow::shell
