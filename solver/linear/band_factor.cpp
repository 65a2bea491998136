// Numeric part of the envelope factorization. Column by column of bundles (four columns at a time), left-looking: the
// rows of up to three bundles are gathered in registers,
//   C = A(rows, J) - L(rows, :) D L(J, :)',
// then divided by the diagonal block: L(rows, J) = C L_JJ^-T D_J^-1. Golub & Van Loan, Matrix Computations, sec. 4.3.
#include "solver/linear/band.h"

#include <cmath>
#include <limits>

namespace bedbow {

using linear::lanes;
using linear::Vec;
using linear::vec;

namespace {

constexpr int block_size = lanes * lanes;
constexpr double epsilon = std::numeric_limits<double>::epsilon();
constexpr double suspicious = 1e-6; // pivot over diagonal below which the displacement is checked

// acc[v][c] -= row_v[k] * packed[k][c] for k in [begin, end), the first `Active` rows only.
template <int V, int Active>
[[gnu::always_inline]] inline void gather(Vec (&acc)[V][lanes], const double* const (&rows)[V], const double* packed,
                                          int begin, int end) {
  for (int k = begin; k < end; ++k)
    for (int v = 0; v < Active; ++v) {
      const Vec l = vec(rows[v] + static_cast<std::ptrdiff_t>(lanes) * k);
      for (int c = 0; c < lanes; ++c) acc[v][c] -= l * packed[lanes * k + c];
    }
}

} // namespace

// out: V blocks of 4 x 4, column-major.
template <int V> void BandLdlt::update_chunk(int J, const int* bundles, double* out) const {
  const double* rows[V];
  int begin[V + 1];
  Vec acc[V][lanes];
  for (int v = 0; v < V; ++v) {
    rows[v] = row(bundles[v]);
    begin[v] = lanes * std::max(first_[bundles[v]], first_[J]);
    for (int c = 0; c < lanes; ++c) acc[v][c] = vec(rows[v] + block_size * static_cast<std::ptrdiff_t>(J) + lanes * c);
  }
  begin[V] = lanes * J;
  const double* packed = packed_.data();
  gather<V, 1>(acc, rows, packed, begin[0], begin[1]);
  if constexpr (V > 1) gather<V, 2>(acc, rows, packed, begin[1], begin[2]);
  if constexpr (V > 2) gather<V, 3>(acc, rows, packed, begin[2], begin[3]);
  for (int v = 0; v < V; ++v)
    for (int c = 0; c < lanes; ++c) vec(out + block_size * v + lanes * c) = acc[v][c];
}

// Divides the V gathered blocks by the diagonal block and stores them.
template <int V> void BandLdlt::finish_chunk(int J, const int* bundles, const double* block) {
  const double* m = row(J) + block_size * static_cast<std::ptrdiff_t>(J); // inverse of L_JJ
  const double* d = inverse_pivot_.data() + static_cast<std::ptrdiff_t>(lanes) * J;
  for (int v = 0; v < V; ++v) {
    const double* c = block + block_size * v;
    double* out = row(bundles[v]) + block_size * static_cast<std::ptrdiff_t>(J);
    const Vec c0 = vec(c), c1 = vec(c + 4), c2 = vec(c + 8), c3 = vec(c + 12);
    vec(out) = c0 * d[0];
    vec(out + 4) = (c1 + c0 * m[1]) * d[1];
    vec(out + 8) = (c2 + c1 * m[6] + c0 * m[2]) * d[2];
    vec(out + 12) = (c3 + c2 * m[11] + c1 * m[7] + c0 * m[3]) * d[3];
  }
}

// L D L' of a 4 x 4 block; leaves the inverse of its unit lower triangle in the envelope.
void BandLdlt::factor_diagonal(int J, double* a) {
  double l[block_size] = {};
  for (int c = 0; c < lanes; ++c) {
    const int j = lanes * J + c;
    double d = a[lanes * c + c];
    const double scale = std::abs(diagonal_[j]);
    if (!(d > suspicious * scale)) suspects_.push_back({j, d});
    if (!(std::abs(d) > epsilon * epsilon * scale)) d = scale > 0 ? epsilon * epsilon * scale : 1.0; // to continue
    if (d < 0) ++negative_;
    pivot_[j] = d;
    const double inverse = 1 / d;
    inverse_pivot_[j] = inverse;
    for (int r = c + 1; r < lanes; ++r) l[lanes * c + r] = a[lanes * c + r] * inverse;
    for (int q = c + 1; q < lanes; ++q)
      for (int r = q; r < lanes; ++r) a[lanes * q + r] -= l[lanes * c + r] * a[lanes * c + q];
  }
  const double l10 = l[1], l20 = l[2], l30 = l[3], l21 = l[6], l31 = l[7], l32 = l[11];
  double* m = row(J) + block_size * static_cast<std::ptrdiff_t>(J);
  const double m20 = l10 * l21 - l20, m31 = l21 * l32 - l31;
  const double m30 = l10 * l31 - l30 - l32 * m20;
  const double inverse_l[block_size] = {1, -l10, m20, m30, 0, 1, -l21, m31, 0, 0, 1, -l32, 0, 0, 0, 1};
  for (int i = 0; i < block_size; ++i) m[i] = inverse_l[i];
}

void BandLdlt::factor_column(int J) {
  constexpr int wide = 3;
  const double* own = row(J);
  for (int k = lanes * first_[J]; k < lanes * J; ++k) vec(&packed_[lanes * k]) = vec(own + lanes * k) * pivot_[k];

  const int* list = column_rows_.data() + column_start_[J];
  const int count = column_start_[J + 1] - column_start_[J];
  alignas(32) double block[wide * block_size];
  const int head[wide] = {J, count > 0 ? list[0] : 0, count > 1 ? list[1] : 0};
  const int with_head = std::min(count, wide - 1);
  if (with_head == 2)
    update_chunk<3>(J, head, block);
  else if (with_head == 1)
    update_chunk<2>(J, head, block);
  else
    update_chunk<1>(J, head, block);
  factor_diagonal(J, block);
  if (with_head == 2)
    finish_chunk<2>(J, head + 1, block + block_size);
  else if (with_head == 1)
    finish_chunk<1>(J, head + 1, block + block_size);

  int i = with_head;
  for (; i + wide <= count; i += wide) {
    update_chunk<wide>(J, list + i, block);
    finish_chunk<wide>(J, list + i, block);
  }
  if (count - i == 2) {
    update_chunk<2>(J, list + i, block);
    finish_chunk<2>(J, list + i, block);
  } else if (count - i == 1) {
    update_chunk<1>(J, list + i, block);
    finish_chunk<1>(J, list + i, block);
  }
}

std::optional<Breakdown> BandLdlt::factor_in_place(bool positive) {
  for (int i = 0; i < lanes * bundles_; ++i) {
    double& a = row(i / lanes)[static_cast<std::ptrdiff_t>(lanes) * i + i % lanes];
    if (i >= n_) a = 1;
    diagonal_[i] = a;
  }
  negative_ = 0;
  suspects_.clear();
  for (int J = 0; J < bundles_; ++J) factor_column(J);
  return suspects_.empty() ? std::nullopt : examine(positive);
}

// u = L^-T e_j: the displacement with u_j = 1 without force on the unknowns before j. Its energy is the pivot.
Eigen::VectorXd BandLdlt::movement(int j) const {
  linear::AlignedDoubles x(static_cast<std::size_t>(lanes) * bundles_, 0.0);
  // Within its own block, the columns after j do not count: they are not yet eliminated.
  x[j] = 1;
  backward_one(x.data(), j / lanes);
  Eigen::VectorXd u(n_);
  for (int i = 0; i < n_; ++i) u[old_index(i)] = x[i];
  return u;
}

std::optional<Breakdown> BandLdlt::examine(bool positive) const {
  for (const auto& [j, pivot] : suspects_) {
    if (!positive && std::abs(pivot) > suspicious * std::abs(diagonal_[j])) continue; // negative, as permitted
    Eigen::VectorXd u = movement(j);
    double scale = 0;
    for (int i = 0; i <= j; ++i) scale += std::abs(diagonal_[i]) * u[old_index(i)] * u[old_index(i)];
    if (std::abs(pivot) > 8 * epsilon * scale && !(positive && pivot < 0)) continue;
    int largest = 0;
    u.cwiseAbs().maxCoeff(&largest);
    u /= u[largest];
    return Breakdown{old_index(j), std::move(u)};
  }
  return std::nullopt;
}

} // namespace bedbow
