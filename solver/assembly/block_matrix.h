/// \file
/// Sparse lower triangle built block by block of node: the pattern from pairs of nodes, then values added in place.
#pragma once

#include "solver/assembly/dof_map.h"
#include "solver/linear/factorization.h"

#include <Eigen/Core>

#include <utility>
#include <vector>

namespace bedbow {

/// One component's matrix under construction.
class BlockMatrix {
public:
  /// \param couplings pairs of reference nodes that share an element, in any order, repeats welcome.
  BlockMatrix(const DofMap& map, const Substructure& component, const std::vector<int>& position,
              std::vector<std::pair<int, int>> couplings);

  /// Adds a 6 x 6 block for rows of reference node i and columns of j (global node numbers). Only one of (i, j) and
  /// (j, i) is to be added where i != j; for i == j the lower triangle of the block counts.
  void add(int i, int j, const Matrix6d& block);

  /// The finished matrix.
  SymmetricMatrix take() {
    SymmetricMatrix out;
    out.swap(matrix_); // Eigen's sparse matrices can't be moved
    return out;
  }

private:
  const DofMap* map_;
  const std::vector<int>* position_;                    // of each reference node in its component
  std::vector<std::vector<std::pair<int, int>>> below_; // by column node: (row node position, offset in the column)
  std::vector<int> width_;                              // free dofs by node position
  SymmetricMatrix matrix_;
};

} // namespace bedbow
