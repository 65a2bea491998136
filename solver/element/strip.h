/// \file
/// What bending across its width adds to the beam element of a flat: stiffness, mass, geometric stiffness and stresses
/// of a plate in bending with a few functions across the width, Hermite's cubics along it, and a small field of shear
/// deformation across. Together with the beam's own matrices they are those of the whole flat.
/// Sources and derivation: docs/theory/strips.md.
///
/// Unknowns of an element: the six displacements of its first and second node, in the bar's axes, then the amplitudes
/// of the first end and of the second, padded to whole nodes of six.
#pragma once

#include "mesh/piece/across.h"
#include "mesh/piece/flat.h"
#include "solver/element/beam.h"

#include <Eigen/Core>

namespace bedbow {

/// A flat's section with the integrals of its functions over the width.
struct StripSection {
  double E = 0, G = 0, nu = 0, density = 0; ///< [Pa], [kg/m^3]
  double thickness = 0;                     ///< [m]
  double J = 0;                             ///< torsion constant of the section [m^4]
  double shear_area = 0;                    ///< for shear along the normal [m^2]
  StripDofs dofs;
  int nodes = 0;                    ///< nodes of six amplitudes at either end
  Eigen::MatrixXd A, B, C, F, X, Y; ///< of phi phi, phi'' phi, phi'' phi'', phi' phi', chi chi, chi' chi'
  Eigen::MatrixXd M;                ///< of phi chi
  Eigen::MatrixXd A1;               ///< of c phi phi
  /// D of the plate [N m].
  [[nodiscard]] double plate() const { return E * thickness * thickness * thickness / (12 * (1 - nu * nu)); }
  [[nodiscard]] int size() const { return 12 * (1 + nodes); }
};

StripSection make_strip_section(const AcrossFunctions& across, const FlatSection& flat, const BeamData& beam,
                                double nu);

/// Stiffness beside the beam's. \return size x size, symmetric.
Eigen::MatrixXd strip_stiffness(const StripSection& section, double length);

/// Mass beside the beam's. \return size x size, symmetric.
Eigen::MatrixXd strip_mass(const StripSection& section, double length);

/// Geometric stiffness beside the beam's, of the stress sigma = axial + gradient * c. \param axial mean direct stress
/// [Pa]. \param gradient across the width [Pa/m].
Eigen::MatrixXd strip_geometric(const StripSection& section, double length, double axial, double gradient);

/// Loads of the amplitudes under a uniform line along the whole element: the share beside the beam's. \param across at
/// the line. \param force per length along x, across and along the normal [N/m]. \param moment per length about the
/// same axes [N]; what it does about the normal is the beam's. \return of size; the first twelve are 0.
Eigen::VectorXd strip_line_load(const StripSection& section, const AcrossValues& across, double length,
                                const Eigen::Vector3d& force, const Eigen::Vector3d& moment);

/// Amplitudes of the functions phi at one section of an element, with the derivatives along it that moments take.
struct StripAmplitudes {
  AcrossVector value, slope; ///< W_k [m], W_k' [1]
  AcrossVector curvature;    ///< of the normals along the length, W_k'' but for shear [1/m]
};

/// \param s position / length in [0, 1]. \param u unknowns of the element.
StripAmplitudes strip_amplitudes(const StripSection& section, double length, const Eigen::Ref<const Eigen::VectorXd>& u,
                                 double s);

/// Moments per width of the plate [N], on the middle plane's axes along and across: positive moments stretch the side
/// to which the normal points.
struct StripMoments {
  double along = 0, across = 0, twist = 0;
};

/// Moments at the place of `across`.
StripMoments strip_moments(const StripSection& section, const AcrossValues& across, const StripAmplitudes& amplitudes);

/// Mean of the moment along over the width, as in strip_moments [N].
double strip_mean_moment(const StripSection& section, const StripAmplitudes& amplitudes);

} // namespace bedbow
