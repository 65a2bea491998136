/// \file
/// Adding contributions at one node to the assembled matrices.
#pragma once

#include "solver/assembly/assembly.h"

namespace bedbow {

/// Adds a symmetric block to a reference node's own unknowns. \param matrices by component.
inline void add_node_block(std::vector<SymmetricMatrix>& matrices, const DofMap& map, int ref, const Matrix6d& block) {
  SymmetricMatrix& m = matrices[map.substructure[ref]];
  const auto& dofs = map.dofs[ref];
  for (int b = 0; b < 6; ++b)
    for (int a = b; a < 6; ++a)
      if (dofs[a] >= 0 && dofs[b] >= 0) m.coeffRef(dofs[a], dofs[b]) += block(a, b);
}

/// Map of a beam element with releases: full local displacements = map * kept ones.
inline Matrix12d release_map(const Matrix12d& stiffness, const BeamReleases& releases) {
  Matrix12d t;
  for (int j = 0; j < 12; ++j)
    t.col(j) = releases.dofs[static_cast<std::size_t>(j)]
                   ? Vector12d::Zero()
                   : beam_release_recover(stiffness, Vector12d::Zero(), releases.dofs, Vector12d::Unit(j));
  return t;
}

} // namespace bedbow
