/// \file
/// A = L D L' on envelope storage, without pivoting, for matrices numbered station by station (frame ladders).
///
/// Rows are kept in bundles of four, each bundle from its first nonzero column (rounded down to a multiple of four) to
/// its diagonal, the four rows interleaved: element (i, k) of bundle I = i / 4 stands at `origin[I] + 4 k + i % 4`. A
/// column of a bundle is one vector register, so that every kernel streams through memory. Work is n h^2 / 2
/// multiply-adds for half-bandwidth h; a long row affects only its own cost.
#pragma once

#include "solver/linear/factorization.h"
#include "solver/linear/vec.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace bedbow {

/// Where a factorization broke down, and the mechanism.
struct Breakdown {
  int unknown = -1;          ///< in the matrix's own numbering
  Eigen::VectorXd mechanism; ///< size n, largest entry 1
};

/// Envelope L D L'. Keeps its memory: factor again and again matrices of one pattern (or of a part of it).
class BandLdlt final : public Factorization {
public:
  /// Lays out the envelope. \param pattern lower triangle; only its pattern counts.
  /// \param order order[new] = old, a permutation of 0 .. n-1; empty: as numbered.
  explicit BandLdlt(const SymmetricMatrix& pattern, std::span<const int> order = {});

  /// Fills the envelope with a matrix and factors it. \param lower entries inside the envelope.
  /// \param positive a negative pivot is a breakdown too.
  /// \return nothing on success, else the first breakdown; the factor is then invalid.
  /// A pivot counts as zero when its displacement u = L^-T e_j, with energy d_j = u'Au, has no more energy than
  /// rounding: d_j <= 8 eps u' diag(A) u. Throws std::logic_error on an entry outside the envelope.
  std::optional<Breakdown> factor(const SymmetricMatrix& lower, bool positive = true);

  /// The same by hand, for callers that add element matrices straight into the envelope: clear(), add() each entry of
  /// the lower triangle (i >= j in the matrix's numbering, or either where the order swaps them), factor_in_place().
  void clear();
  void add(int i, int j, double value) { *place(i, j) += value; }
  std::optional<Breakdown> factor_in_place(bool positive = true);

  [[nodiscard]] int size() const override { return n_; }
  void solve(Eigen::Ref<Eigen::MatrixXd> b) const override;
  [[nodiscard]] int negative_pivots() const override { return negative_; }
  [[nodiscard]] std::size_t bytes() const override;
  [[nodiscard]] Eigen::MatrixXd compliance(const Eigen::SparseMatrix<double>& b) const override;

  /// W = L^-1 P B, in the factor's own order. \param b size x k in place.
  void forward(Eigen::Ref<Eigen::MatrixXd> b) const;
  /// Pivots d_j in the factor's own order, so that B' A^-1 B = W' D^-1 W.
  [[nodiscard]] std::span<const double> pivots() const { return {pivot_.data(), static_cast<std::size_t>(n_)}; }
  /// Numbers in the envelope; work grows with the sum of squares of its row lengths.
  [[nodiscard]] std::size_t envelope() const { return values_.size(); }

private:
  void lay_out(const SymmetricMatrix& pattern);
  void list_columns();
  [[nodiscard]] double* place(int i, int j);
  [[noreturn]] static void outside(int i, int j);
  void fill(const SymmetricMatrix& lower);
  [[nodiscard]] const double* row(int I) const { return values_.data() + origin_[I]; }
  [[nodiscard]] double* row(int I) { return values_.data() + origin_[I]; }
  [[nodiscard]] int new_index(int old) const { return inverse_.empty() ? old : inverse_[old]; }
  [[nodiscard]] int old_index(int i) const { return order_.empty() ? i : order_[i]; }

  void factor_column(int J);
  template <int V> void update_chunk(int J, const int* bundles, double* out) const;
  template <int V> void finish_chunk(int J, const int* bundles, const double* block);
  void factor_diagonal(int J, double* block);
  [[nodiscard]] std::optional<Breakdown> examine(bool positive) const;
  [[nodiscard]] Eigen::VectorXd movement(int j) const;

  template <int W> void forward_block(double* x, int start) const;
  template <int W> void backward_block(double* x, int from) const;
  void forward_one(double* x) const;
  void backward_one(double* x, int from) const;
  void scale(double* x, int columns) const;
  template <int W> void solve_block(Eigen::Ref<Eigen::MatrixXd> b, int first, linear::AlignedDoubles& x) const;

  int n_ = 0, bundles_ = 0, negative_ = 0;
  std::vector<int> order_, inverse_;
  std::vector<int> first_;             // first bundle-column of each bundle of rows
  std::vector<std::ptrdiff_t> origin_; // see above
  std::vector<int> column_start_;      // bundles below the diagonal that reach each bundle-column, longest first
  std::vector<int> column_rows_;
  linear::AlignedDoubles values_; // L; diagonal blocks hold the inverse of their unit lower triangle
  linear::AlignedDoubles packed_; // D L' of the current bundle
  std::vector<double> diagonal_;  // of A
  std::vector<double> pivot_, inverse_pivot_;
  struct Suspect {
    int index;
    double pivot;
  };
  std::vector<Suspect> suspects_; // pivots to be checked, as computed
};

} // namespace bedbow
