#include "solver/linear/supernodal.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace bedbow::linear {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

constexpr Index together = 32; // columns that go through the factor at once

/// Rows of one supernode of W for one bunch of columns.
struct Piece {
  std::size_t supernode;
  std::size_t bunch;
  RowMajor rows;
};

class HalfSolver {
public:
  HalfSolver(const ::cholmod_factor& l, int limit)
      : super_(static_cast<const int*>(l.super))
      , rows_start_(static_cast<const int*>(l.pi))
      , values_start_(static_cast<const int*>(l.px))
      , rows_(static_cast<const int*>(l.s))
      , values_(static_cast<const double*>(l.x))
      , supernodes_(l.nsuper)
      , limit_(limit)
      , of_(l.n)
      , place_(l.n) {
    for (std::size_t s = 0; s < supernodes_; ++s) std::fill(of_.begin() + super_[s], of_.begin() + super_[s + 1], s);
    const int* order = static_cast<const int*>(l.Perm);
    for (std::size_t i = 0; i < l.n; ++i) place_[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
  }

  /// Columns in order of their first pivot, so that neighbours share their way to the root.
  [[nodiscard]] std::vector<int> sorted(const Eigen::SparseMatrix<double>& b) const {
    std::vector<int> first(static_cast<std::size_t>(b.cols()), static_cast<int>(place_.size()));
    for (int j = 0; j < b.cols(); ++j)
      for (Eigen::SparseMatrix<double>::InnerIterator it(b, j); it; ++it)
        first[j] = std::min(first[j], place_[static_cast<std::size_t>(it.row())]);
    std::vector<int> order(first.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int i, int j) { return first[i] < first[j]; });
    return order;
  }

  /// Eliminates a bunch of columns; the pieces of W are appended.
  void eliminate(const Eigen::SparseMatrix<double>& b, const std::vector<int>& order, std::size_t bunch,
                 std::vector<Piece>& pieces, MatrixXd& left) const {
    const Index first = together * static_cast<Index>(bunch), width = std::min(together, b.cols() - first);
    RowMajor x = RowMajor::Zero(static_cast<Index>(place_.size()), width);
    std::vector<char> reached(supernodes_, 0);
    for (Index j = 0; j < width; ++j)
      for (Eigen::SparseMatrix<double>::InnerIterator it(b, order[first + j]); it; ++it) {
        const int i = place_[static_cast<std::size_t>(it.row())];
        x(i, j) += it.value();
        reached[of_[i]] = 1;
      }
    for (std::size_t s = 0; s < supernodes_ && super_[s] < limit_; ++s) {
      if (!reached[s]) continue;
      const Index all = rows_start_[s + 1] - rows_start_[s];
      const Index pivots = std::min(super_[s + 1], limit_) - super_[s];
      const Eigen::Map<const MatrixXd, 0, Eigen::OuterStride<>> l(values_ + values_start_[s], all, pivots,
                                                                  Eigen::OuterStride<>(all));
      Piece p{s, bunch, x.middleRows(super_[s], pivots)};
      l.topRows(pivots).triangularView<Eigen::Lower>().solveInPlace(p.rows);
      const RowMajor below = l.bottomRows(all - pivots) * p.rows;
      for (Index i = 0; i < below.rows(); ++i) {
        const int row = rows_[rows_start_[s] + pivots + i];
        x.row(row) -= below.row(i);
        reached[of_[row]] = 1;
      }
      pieces.push_back(std::move(p));
    }
    for (Index j = 0; j < width; ++j) left.col(order[first + j]) = x.col(j).tail(left.rows());
  }

private:
  const int *super_, *rows_start_, *values_start_, *rows_;
  const double* values_;
  std::size_t supernodes_;
  int limit_;
  std::vector<std::size_t> of_; // supernode of each pivot
  std::vector<int> place_;      // pivot of each unknown
};

/// C += W' W. \param order of the columns.
void add_products(std::vector<Piece>& pieces, const std::vector<int>& order, MatrixXd& c) {
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const Piece& a, const Piece& b) { return a.supernode < b.supernode; });
  MatrixXd sorted = MatrixXd::Zero(c.rows(), c.cols());
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
  for (Index j = 0; j < c.cols(); ++j)
    for (Index i = j; i < c.rows(); ++i) {
      c(order[i], order[j]) += sorted(i, j);
      if (i != j) c(order[j], order[i]) += sorted(i, j);
    }
}

} // namespace

MatrixXd add_half_products(const ::cholmod_factor& l, int limit, const Eigen::SparseMatrix<double>& b, MatrixXd& c) {
  MatrixXd left(static_cast<Index>(l.n) - limit, b.cols());
  const HalfSolver solver(l, limit);
  const std::vector<int> order = solver.sorted(b);
  std::vector<Piece> pieces;
  for (std::size_t bunch = 0; together * static_cast<Index>(bunch) < b.cols(); ++bunch)
    solver.eliminate(b, order, bunch, pieces, left);
  add_products(pieces, order, c);
  return left;
}

} // namespace bedbow::linear
