/// \file
/// Half solves on CHOLMOD's supernodal factor for right-hand sides with few entries.
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>
#include <cholmod.h>

namespace bedbow::linear {

/// W = L^-1 P B as far as the first `limit` pivots go, and C += W' W of those rows. A column reaches only the
/// supernodes between its entries and the root of the elimination tree, so columns that lie together cost little
/// (Gilbert & Peierls 1988, from memory). \param l supernodal L L'. \param b n x k, unknowns in the matrix's own
/// numbering. \param c k x k. \return what is left on the rows from `limit` on: (n - limit) x k, in the factor's order.
Eigen::MatrixXd add_half_products(const ::cholmod_factor& l, int limit, const Eigen::SparseMatrix<double>& b,
                                  Eigen::MatrixXd& c);

} // namespace bedbow::linear
