#include "solver/linear/band.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace bedbow {

using linear::lanes;

BandLdlt::BandLdlt(const SymmetricMatrix& pattern, std::span<const int> order)
    : n_(static_cast<int>(pattern.rows()))
    , bundles_((n_ + lanes - 1) / lanes)
    , order_(order.begin(), order.end()) {
  if (pattern.rows() != pattern.cols()) throw std::logic_error("a symmetric matrix must be square");
  if (!order.empty()) {
    if (static_cast<int>(order.size()) != n_) throw std::logic_error("an order must name every unknown once");
    inverse_.assign(n_, -1);
    for (int i = 0; i < n_; ++i) inverse_.at(order_[i]) = i;
    if (std::ranges::find(inverse_, -1) != inverse_.end())
      throw std::logic_error("an order must name every unknown once");
  }
  lay_out(pattern);
  list_columns();
}

void BandLdlt::lay_out(const SymmetricMatrix& pattern) {
  first_.resize(bundles_);
  std::iota(first_.begin(), first_.end(), 0);
  for (int j = 0; j < n_; ++j)
    for (SymmetricMatrix::InnerIterator it(pattern, j); it; ++it) {
      const auto [low, high] = std::minmax({new_index(static_cast<int>(it.row())), new_index(j)});
      int& first = first_[high / lanes];
      first = std::min(first, low / lanes);
    }
  origin_.resize(bundles_);
  std::ptrdiff_t used = 0;
  for (int I = 0; I < bundles_; ++I) {
    origin_[I] = used - static_cast<std::ptrdiff_t>(lanes * lanes) * first_[I];
    used += static_cast<std::ptrdiff_t>(lanes * lanes) * (I + 1 - first_[I]);
  }
  values_.assign(used, 0.0);
  packed_.assign(static_cast<std::size_t>(lanes * lanes) * bundles_, 0.0);
  diagonal_.assign(static_cast<std::size_t>(lanes) * bundles_, 1.0);
  pivot_.assign(diagonal_.size(), 1.0);
  inverse_pivot_.assign(diagonal_.size(), 1.0);
}

// For each bundle-column, the bundles below the diagonal that reach it; those that reach furthest left come first, so
// that a chunk of them is updated over increasing numbers of rows.
void BandLdlt::list_columns() {
  column_start_.assign(bundles_ + 1, 0);
  for (int I = 0; I < bundles_; ++I)
    for (int J = first_[I]; J < I; ++J) ++column_start_[J + 1];
  std::partial_sum(column_start_.begin(), column_start_.end(), column_start_.begin());
  column_rows_.resize(column_start_.back());
  std::vector<int> fill(column_start_.begin(), column_start_.end() - 1);
  for (int I = 0; I < bundles_; ++I)
    for (int J = first_[I]; J < I; ++J) column_rows_[fill[J]++] = I;
  if (std::ranges::is_sorted(first_)) return;
  for (int J = 0; J < bundles_; ++J)
    std::stable_sort(column_rows_.begin() + column_start_[J], column_rows_.begin() + column_start_[J + 1],
                     [&](int a, int b) { return std::max(first_[a], first_[J]) < std::max(first_[b], first_[J]); });
}

void BandLdlt::outside(int i, int j) {
  throw std::logic_error("entry (" + std::to_string(i) + ", " + std::to_string(j) +
                         ") lies outside the envelope laid out from the pattern");
}

double* BandLdlt::place(int i, int j) {
  int high = new_index(i), low = new_index(j);
  if (high < low) std::swap(high, low);
  const int I = high / lanes;
  if (low / lanes < first_[I]) outside(i, j);
  return row(I) + static_cast<std::ptrdiff_t>(lanes) * low + high % lanes;
}

void BandLdlt::clear() {
  std::ranges::fill(values_, 0.0);
}

void BandLdlt::fill(const SymmetricMatrix& lower) {
  const int* starts = lower.outerIndexPtr();
  const int* ends = lower.innerNonZeroPtr();
  const int* rows = lower.innerIndexPtr();
  const double* numbers = lower.valuePtr();
  for (int j = 0; j < n_; ++j) {
    const int end = ends ? starts[j] + ends[j] : starts[j + 1];
    for (int p = starts[j]; p < end; ++p) {
      const int i = rows[p];
      if (i < j) continue; // upper triangle: ignored
      unsigned high = new_index(i), low = new_index(j);
      if (high < low) std::swap(high, low);
      const unsigned I = high / lanes;
      if (low / lanes < static_cast<unsigned>(first_[I])) outside(i, j);
      values_[origin_[I] + static_cast<std::ptrdiff_t>(lanes * low + high % lanes)] = numbers[p];
    }
  }
}

std::optional<Breakdown> BandLdlt::factor(const SymmetricMatrix& lower, bool positive) {
  if (lower.rows() != n_ || lower.cols() != n_)
    throw std::logic_error("the size of the matrix differs from that of the layout");
  clear();
  fill(lower);
  return factor_in_place(positive);
}

std::size_t BandLdlt::bytes() const {
  return sizeof(double) * (values_.size() + packed_.size() + diagonal_.size() + 2 * pivot_.size()) +
         sizeof(int) * (column_rows_.size() + column_start_.size() + first_.size() + 2 * order_.size()) +
         sizeof(std::ptrdiff_t) * origin_.size();
}

} // namespace bedbow
