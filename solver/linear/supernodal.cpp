#include "solver/linear/supernodal.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace bedbow::linear {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

constexpr Index together = 32; // columns processed at once

/// Rows of one supernode of W for one block of columns.
struct Piece {
  std::size_t supernode;
  std::size_t bunch;
  RowMajor rows;
};

class HalfSolver {
public:
  explicit HalfSolver(const Supernodes& l)
      : l_(l)
      , of_(l.place.size()) {
    for (std::size_t s = 0; s < l.count(); ++s) std::fill(of_.begin() + l.first[s], of_.begin() + l.first[s + 1], s);
  }

  /// Columns in order of their first pivot, so that neighbours share their path to the root.
  [[nodiscard]] std::vector<int> sorted(const Eigen::SparseMatrix<double>& b) const {
    std::vector<int> first(static_cast<std::size_t>(b.cols()), static_cast<int>(l_.place.size()));
    for (int j = 0; j < b.cols(); ++j)
      for (Eigen::SparseMatrix<double>::InnerIterator it(b, j); it; ++it)
        first[j] = std::min(first[j], l_.place[static_cast<std::size_t>(it.row())]);
    std::vector<int> order(first.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int i, int j) { return first[i] < first[j]; });
    return order;
  }

  /// Eliminates a block of columns; the pieces of W are appended.
  void eliminate(const Eigen::SparseMatrix<double>& b, const std::vector<int>& order, std::size_t bunch,
                 std::vector<Piece>& pieces) const {
    const Index first = together * static_cast<Index>(bunch), width = std::min(together, b.cols() - first);
    RowMajor x = RowMajor::Zero(static_cast<Index>(l_.place.size()), width);
    std::vector<char> reached(l_.count(), 0);
    for (Index j = 0; j < width; ++j)
      for (Eigen::SparseMatrix<double>::InnerIterator it(b, order[first + j]); it; ++it) {
        const int i = l_.place[static_cast<std::size_t>(it.row())];
        x(i, j) += it.value();
        reached[of_[i]] = 1;
      }
    for (std::size_t s = 0; s < l_.count(); ++s) {
      if (!reached[s]) continue;
      const int* rows = l_.rows.data() + l_.rows_start[s];
      const auto all = static_cast<Index>(l_.rows_start[s + 1] - l_.rows_start[s]);
      const Index pivots = l_.first[s + 1] - l_.first[s];
      const Eigen::Map<const MatrixXd> l(l_.values + l_.values_start[s], all, pivots);
      Piece p{s, bunch, x.middleRows(l_.first[s], pivots)};
      l.topRows(pivots).triangularView<Eigen::Lower>().solveInPlace(p.rows);
      const RowMajor below = l.bottomRows(all - pivots) * p.rows;
      for (Index i = 0; i < below.rows(); ++i) {
        const int row = rows[pivots + i];
        x.row(row) -= below.row(i);
        reached[of_[row]] = 1;
      }
      pieces.push_back(std::move(p));
    }
  }

private:
  const Supernodes& l_;
  std::vector<std::size_t> of_; // supernode of each pivot
};

/// W' W of columns in that order. \return the lower triangle, in the columns' own order, and its mirror image.
MatrixXd products(std::vector<Piece>& pieces, const std::vector<int>& order) {
  const auto k = static_cast<Index>(order.size());
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const Piece& a, const Piece& b) { return a.supernode < b.supernode; });
  MatrixXd sorted = MatrixXd::Zero(k, k);
  for (auto from = pieces.begin(); from != pieces.end();) {
    auto to = from;
    while (to != pieces.end() && to->supernode == from->supernode) ++to;
    for (auto a = from; a != to; ++a)
      for (auto b = from; b <= a; ++b)
        sorted
            .block(together * static_cast<Index>(a->bunch), together * static_cast<Index>(b->bunch), a->rows.cols(),
                   b->rows.cols())
            .noalias() += a->rows.transpose() * b->rows;
    from = to;
  }
  MatrixXd c(k, k);
  for (Index j = 0; j < k; ++j)
    for (Index i = j; i < k; ++i) c(order[i], order[j]) = c(order[j], order[i]) = sorted(i, j);
  return c;
}

} // namespace

Supernodes supernodes_of(const ::cholmod_factor& l) {
  const auto count = l.nsuper;
  const int *super = static_cast<const int*>(l.super), *rows_start = static_cast<const int*>(l.pi);
  const int *values_start = static_cast<const int*>(l.px), *rows = static_cast<const int*>(l.s);
  const int* order = static_cast<const int*>(l.Perm);
  Supernodes out;
  out.first.assign(super, super + count + 1);
  out.rows_start.assign(rows_start, rows_start + count + 1);
  out.rows.assign(rows, rows + rows_start[count]);
  out.values_start.assign(values_start, values_start + count);
  out.values = static_cast<const double*>(l.x);
  out.place.resize(l.n);
  for (std::size_t i = 0; i < l.n; ++i) out.place[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
  return out;
}

MatrixXd half_products(const Supernodes& l, const Eigen::SparseMatrix<double>& b) {
  const HalfSolver solver(l);
  const std::vector<int> order = solver.sorted(b);
  std::vector<Piece> pieces;
  for (std::size_t bunch = 0; together * static_cast<Index>(bunch) < b.cols(); ++bunch)
    solver.eliminate(b, order, bunch, pieces);
  return products(pieces, order);
}

} // namespace bedbow::linear
