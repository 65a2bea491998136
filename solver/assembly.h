/// \file
/// Sums element matrices into the sparse matrix of each component, through rigid arms, block of node by block of node.
/// (What the builder bolts together is a Machine here; "assembly" always means this sum.)
#pragma once

#include "solver/dof_map.h"
#include "solver/element/beam_lateral.h"
#include "solver/element/shell4.h"
#include "solver/linear/factorization.h"
#include "solver/own_element.h"

#include <array>
#include <functional>
#include <vector>

namespace bedbow {

/// Constants of the beam elements, one per section and material in use, and per length.
struct ElementData {
  std::vector<BeamData> beams;        ///< by beam element's entry in `of_beam`
  std::vector<int> of_beam;           ///< by beam element
  std::vector<double> nu;             ///< Poisson's ratio, by entry of `beams`
  std::vector<beam::Lateral> lateral; ///< by beam element's entry in `of_lateral`; neighbours alike share one
  std::vector<int> of_lateral;        ///< by beam element
  std::vector<char> plain;            ///< by beam element: stands in its frame's axes, with nothing released
  OwnElements own;
};
/// Throws std::invalid_argument for an element that is not registered or does not fit.
ElementData make_element_data(const Machine& machine, const Mesh& mesh, const Registry<ElementEntry>& elements);

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

/// Corner places of a shell element.
Corners corners_of(const Mesh& mesh, const ShellElement& element);

/// Element matrix of a beam or shell in global axes of its frame, dofs node by node.
using BeamMatrix = std::function<const Matrix12d&(int element)>;
using ShellMatrix = std::function<Eigen::Matrix<double, 24, 24>(int element)>;

/// Stiffness of one beam element in its own axes, with nothing released.
Matrix12d beam_local_stiffness(const Mesh& mesh, const ElementData& data, int element);

/// Stiffness of one shell element in global axes.
Matrix24d shell_stiffness_of(const Machine& machine, const Mesh& mesh, const ElementData& data, int element);

/// Stiffness of one beam element in global axes, releases condensed.
Matrix12d beam_stiffness_of(const Mesh& mesh, const ElementData& data, int element);

/// Sums given element matrices (and, for stiffness, the screws' springs) into one lower triangle per component.
std::vector<SymmetricMatrix> assemble(const Mesh& mesh, const DofMap& map, const BeamMatrix& beams,
                                      const ShellMatrix& shells, bool with_screws);

/// Stiffness matrices by component.
std::vector<SymmetricMatrix> assemble_stiffness(const Machine& machine, const Mesh& mesh, const DofMap& map,
                                                const ElementData& data);

/// Factor hints of a component.
FactorHints hints_of(const Component& component, bool plane);

} // namespace bedbow
