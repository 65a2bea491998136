/// \file
/// Sums element matrices into the sparse matrix of each component, through rigid arms, block of node by block of node.
/// (The physical assembly is called a Machine here; "assembly" always means this sum.)
#pragma once

#include "solver/assembly/dof_map.h"
#include "solver/assembly/mesh_elements.h"
#include "solver/linear/factorization.h"

#include <functional>
#include <vector>

namespace bedbow {

/// Element matrix of a beam or shell in global axes of its frame, dofs node by node.
using BeamMatrix = std::function<const Matrix12d&(int element)>;
using StripMatrix = std::function<const Eigen::MatrixXd&(int element)>;
using ShellMatrix = std::function<Eigen::Matrix<double, 24, 24>(int element)>;

/// Sums given element matrices (and, for stiffness, the screws' springs) into one lower triangle per component.
std::vector<SymmetricMatrix> assemble(const Mesh& mesh, const DofMap& map, const BeamMatrix& beams,
                                      const StripMatrix& strips, const ShellMatrix& shells, bool with_screws);

/// Stiffness matrices by component.
std::vector<SymmetricMatrix> assemble_stiffness(const Machine& machine, const Mesh& mesh, const DofMap& map,
                                                const ElementData& data);

/// Factor hints of a component.
FactorHints hints_of(const Substructure& component, bool plane);

} // namespace bedbow
