/// \file
/// Half solves on a supernodal factor for right-hand sides with few entries.
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>
#include <cholmod.h>

#include <cstddef>
#include <vector>

namespace bedbow::linear {

/// L of L L' = P A P' in dense pieces: the columns of a supernode share their rows.
struct Supernodes {
  std::vector<int> first;                ///< pivot of each supernode, and the number of pivots at the end
  std::vector<std::size_t> rows_start;   ///< of each supernode in `rows`, and their number at the end
  std::vector<int> rows;                 ///< pivots, ascending, the supernode's own first
  std::vector<std::size_t> values_start; ///< of each supernode in `values`, column by column
  const double* values = nullptr;        ///< must outlive this
  std::vector<int> place;                ///< pivot of each unknown

  [[nodiscard]] std::size_t count() const { return first.size() - 1; }
};

/// \param l supernodal L L'; must outlive the result.
Supernodes supernodes_of(const ::cholmod_factor& l);

/// B' A^-1 B = W' W with W = L^-1 P B. A column reaches only the supernodes between its entries and the root of the
/// elimination tree, so neighbouring columns are cheap (Gilbert & Peierls 1988, from memory). \param b n x k,
/// unknowns in the matrix's own numbering. \return k x k, exactly symmetric.
Eigen::MatrixXd half_products(const Supernodes& l, const Eigen::SparseMatrix<double>& b);

} // namespace bedbow::linear
