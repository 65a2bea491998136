/// \file
/// The mesh's elements, one by one: matrices and loads of each, by the built-in formulation or by the one that its bar,
/// member or panel names. A named one without mass is lumped, one without loads gets the built-in element's; without
/// geometric stiffness buckling is refused.
#pragma once

#include "solver/assembly/custom_element.h"
#include "solver/element/beam_lateral.h"
#include "solver/element/shell4.h"
#include "solver/element/strip.h"

#include <array>
#include <cmath>
#include <vector>

namespace bedbow {

/// Constants of the beam elements, one per section and material in use, and per length.
struct ElementData {
  std::vector<BeamData> beams;          ///< by beam element's entry in `of_beam`
  std::vector<int> of_beam;             ///< by beam element
  std::vector<double> nu;               ///< Poisson's ratio, by entry of `beams`
  std::vector<beam::Lateral> lateral;   ///< by beam element's entry in `of_lateral`; identical neighbours share one
  std::vector<int> of_lateral;          ///< by beam element
  std::vector<char> plain;              ///< by beam element: parallel to its frame's axes, without releases
  std::vector<StripSection> strips;     ///< by index into Mesh::across
  std::vector<Eigen::MatrixXd> bending; ///< stiffnesses of strip elements; identical neighbours share one
  std::vector<int> of_bending;          ///< by strip element
  std::vector<int> strip_of_beam;       ///< by beam element, -1: none; empty without strips
  CustomElements own;
  /// Strip element of a beam element, -1: none.
  [[nodiscard]] int strip_of(int beam) const {
    return strip_of_beam.empty() ? -1 : strip_of_beam[static_cast<std::size_t>(beam)];
  }
};
/// Throws std::invalid_argument for an element that is not registered or does not fit.
ElementData make_element_data(const Machine& machine, const Mesh& mesh, const Registry<ElementEntry>& elements);

/// Up to rounding: the lengths between equally spaced stations differ in their last digits.
inline bool equal_lengths(double a, double b) {
  return std::abs(a - b) <= 1e-13 * b;
}

/// Throws std::invalid_argument where an element in use has no geometric stiffness.
void require_geometric(const CustomElements& own);

/// Released local dofs of a beam element, node by node, and whether there are any.
struct BeamReleases {
  std::array<bool, 12> dofs{};
  bool any = false;
};
inline BeamReleases releases_of(const BeamElement& element) {
  BeamReleases r;
  for (std::size_t i = 0; i < 6; ++i) {
    r.dofs[i] = element.release_a[i];
    r.dofs[6 + i] = element.release_b[i];
    r.any = r.any || r.dofs[i] || r.dofs[6 + i];
  }
  return r;
}

/// Stiffness of one beam element in its own axes, without releases.
Matrix12d beam_local_stiffness(const Mesh& mesh, const ElementData& data, int element);

/// Mass of one beam element in its own axes, without releases.
Matrix12d beam_local_mass(const Mesh& mesh, const ElementData& data, int element, bool lumped);

/// Geometric stiffness of one beam element in its own axes, without releases, from its forces at each end.
Matrix12d beam_local_geometric(const Mesh& mesh, const ElementData& data, int element, const SectionForces& at_1,
                               const SectionForces& at_2);

/// Nodal loads of a uniform line load on one beam element, own axes, without releases.
Vector12d beam_local_load(const Mesh& mesh, const ElementData& data, int element, const BeamLineLoad& load);

/// Nodal displacements and amplitudes of a strip element, as its matrices take them. \param motion by node.
Eigen::VectorXd strip_unknowns(const Mesh& mesh, const StripElement& strip, const std::vector<Vector6d>& motion);

/// Stiffness of one beam element in global axes, releases condensed.
Matrix12d beam_stiffness_of(const Mesh& mesh, const ElementData& data, int element);

/// Corner places of a shell element.
Corners corners_of(const Mesh& mesh, const ShellElement& element);

/// Stiffness of one shell element in global axes.
Matrix24d shell_stiffness_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element);

/// Mass of one shell element in global axes.
Matrix24d shell_mass_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element, bool lumped);

/// Geometric stiffness of one shell element in global axes. \param u its nodal displacements, global axes.
Matrix24d shell_geometric_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element,
                             const Vector24d& u);

/// Nodal loads of a uniform traction per area on one shell element, global axes [Pa].
Vector24d shell_load_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element,
                        const Eigen::Vector3d& traction);

} // namespace bedbow
