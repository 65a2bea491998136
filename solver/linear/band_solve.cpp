// Solves on the envelope factor. Several right-hand sides go side by side, row-major in blocks of eight, so that each
// entry of the factor is applied to whole vectors.
#include "solver/linear/band.h"

#include <algorithm>
#include <numeric>

namespace bedbow {

using linear::AlignedDoubles;
using linear::lanes;
using linear::Vec;
using linear::vec;

namespace {

constexpr int block_size = lanes * lanes;
constexpr int wide = 2;             // vectors per block of right-hand sides
constexpr int width = wide * lanes; // right-hand sides per block

// (sum a, sum b, sum c, sum d) of four vectors.
inline void sums(const Vec& a, const Vec& b, const Vec& c, const Vec& d, Vec& out) {
  const Vec ab = __builtin_shufflevector(a, b, 0, 4, 2, 6) + __builtin_shufflevector(a, b, 1, 5, 3, 7);
  const Vec cd = __builtin_shufflevector(c, d, 0, 4, 2, 6) + __builtin_shufflevector(c, d, 1, 5, 3, 7);
  out = __builtin_shufflevector(ab, cd, 0, 1, 4, 5) + __builtin_shufflevector(ab, cd, 2, 3, 6, 7);
}

} // namespace

void BandLdlt::forward_one(double* x) const {
  for (int J = 0; J < bundles_; ++J) {
    const double* l = row(J);
    const Vec zero = {};
    Vec acc[lanes] = {vec(x + static_cast<std::ptrdiff_t>(lanes) * J), zero, zero, zero};
    for (int k = lanes * first_[J]; k < lanes * J; k += lanes)
      for (int q = 0; q < lanes; ++q) acc[q] -= vec(l + static_cast<std::ptrdiff_t>(lanes) * (k + q)) * x[k + q];
    const Vec y = (acc[0] + acc[1]) + (acc[2] + acc[3]);
    const double* m = l + block_size * static_cast<std::ptrdiff_t>(J);
    vec(x + static_cast<std::ptrdiff_t>(lanes) * J) =
        (vec(m) * y[0] + vec(m + 4) * y[1]) + (vec(m + 8) * y[2] + vec(m + 12) * y[3]);
  }
}

void BandLdlt::backward_one(double* x, int from) const {
  for (int I = from; I >= 0; --I) {
    const double* l = row(I);
    const double* m = l + block_size * static_cast<std::ptrdiff_t>(I);
    const Vec z = vec(x + static_cast<std::ptrdiff_t>(lanes) * I);
    Vec xi;
    sums(vec(m) * z, vec(m + 4) * z, vec(m + 8) * z, vec(m + 12) * z, xi);
    vec(x + static_cast<std::ptrdiff_t>(lanes) * I) = xi;
    for (int k = lanes * first_[I]; k < lanes * I; k += lanes) {
      const double* p = l + static_cast<std::ptrdiff_t>(lanes) * k;
      Vec dots;
      sums(vec(p) * xi, vec(p + 4) * xi, vec(p + 8) * xi, vec(p + 12) * xi, dots);
      vec(x + k) -= dots;
    }
  }
}

// x: row-major, W vectors a row; rows before bundle `start` are zero and stay untouched (x points at row 0).
template <int W> void BandLdlt::forward_block(double* x, int start) const {
  constexpr std::ptrdiff_t stride = static_cast<std::ptrdiff_t>(W) * lanes;
  for (int J = start; J < bundles_; ++J) {
    const double* l = row(J);
    double* own = x + stride * lanes * J;
    Vec acc[lanes][W];
    for (int r = 0; r < lanes; ++r)
      for (int w = 0; w < W; ++w) acc[r][w] = vec(own + stride * r + lanes * w);
    for (int k = lanes * std::max(first_[J], start); k < lanes * J; ++k)
      for (int r = 0; r < lanes; ++r)
        for (int w = 0; w < W; ++w)
          acc[r][w] -= vec(x + stride * k + lanes * w) * l[static_cast<std::ptrdiff_t>(lanes) * k + r];
    const double* m = l + block_size * static_cast<std::ptrdiff_t>(J);
    for (int r = 0; r < lanes; ++r)
      for (int w = 0; w < W; ++w) {
        Vec y = acc[r][w];
        for (int c = 0; c < r; ++c) y += acc[c][w] * m[lanes * c + r];
        vec(own + stride * r + lanes * w) = y;
      }
  }
}

template <int W> void BandLdlt::backward_block(double* x, int from) const {
  constexpr std::ptrdiff_t stride = static_cast<std::ptrdiff_t>(W) * lanes;
  for (int I = from; I >= 0; --I) {
    const double* l = row(I);
    const double* m = l + block_size * static_cast<std::ptrdiff_t>(I);
    double* own = x + stride * lanes * I;
    Vec xi[lanes][W];
    for (int r = 0; r < lanes; ++r)
      for (int w = 0; w < W; ++w) {
        xi[r][w] = vec(own + stride * r + lanes * w);
        for (int c = r + 1; c < lanes; ++c) xi[r][w] += vec(own + stride * c + lanes * w) * m[lanes * r + c];
      }
    for (int r = 0; r < lanes; ++r)
      for (int w = 0; w < W; ++w) vec(own + stride * r + lanes * w) = xi[r][w];
    for (int k = lanes * first_[I]; k < lanes * I; ++k)
      for (int w = 0; w < W; ++w) {
        Vec& z = vec(x + stride * k + lanes * w);
        Vec sum = z;
        for (int r = 0; r < lanes; ++r) sum -= xi[r][w] * l[static_cast<std::ptrdiff_t>(lanes) * k + r];
        z = sum;
      }
  }
}

void BandLdlt::scale(double* x, int columns) const {
  if (columns == 1) {
    for (int i = 0; i < n_; ++i) x[i] *= inverse_pivot_[i];
    return;
  }
  for (int i = 0; i < n_; ++i)
    for (int c = 0; c < columns; c += lanes) vec(x + static_cast<std::ptrdiff_t>(columns) * i + c) *= inverse_pivot_[i];
}

/// Up to W vectors of columns from `first` on, side by side in x.
template <int W> void BandLdlt::solve_block(Eigen::Ref<Eigen::MatrixXd> b, int first, AlignedDoubles& x) const {
  constexpr int together = W * lanes;
  const int here = std::min(together, static_cast<int>(b.cols()) - first);
  for (int i = 0; i < n_; ++i)
    for (int c = 0; c < here; ++c) x[static_cast<std::size_t>(together) * i + c] = b(old_index(i), first + c);
  std::fill(x.begin() + static_cast<std::ptrdiff_t>(together) * n_, x.end(), 0.0);
  forward_block<W>(x.data(), 0);
  scale(x.data(), together);
  backward_block<W>(x.data(), bundles_ - 1);
  for (int i = 0; i < n_; ++i)
    for (int c = 0; c < here; ++c) b(old_index(i), first + c) = x[static_cast<std::size_t>(together) * i + c];
}

void BandLdlt::solve(Eigen::Ref<Eigen::MatrixXd> b) const {
  const int rows = lanes * bundles_;
  const auto count = static_cast<int>(b.cols());
  if (count < 3) {
    AlignedDoubles x(rows, 0.0);
    for (int c = 0; c < count; ++c) {
      for (int i = 0; i < n_; ++i) x[i] = b(old_index(i), c);
      forward_one(x.data());
      scale(x.data(), 1);
      backward_one(x.data(), bundles_ - 1);
      for (int i = 0; i < n_; ++i) b(old_index(i), c) = x[i];
    }
    return;
  }
  AlignedDoubles x(static_cast<std::size_t>(rows) * width, 0.0);
  for (int c = 0; c < count; c += width) {
    if (count - c > lanes)
      solve_block<wide>(b, c, x);
    else
      solve_block<1>(b, c, x);
  }
}

void BandLdlt::forward(Eigen::Ref<Eigen::MatrixXd> b) const {
  AlignedDoubles x(static_cast<std::size_t>(lanes) * bundles_, 0.0);
  for (Eigen::Index c = 0; c < b.cols(); ++c) {
    for (int i = 0; i < n_; ++i) x[i] = b(old_index(i), c);
    forward_one(x.data());
    for (int i = 0; i < n_; ++i) b(i, c) = x[i];
  }
}

namespace {

// Eight columns of W = L^-1 B that start at about the same row, row-major; rows before `start` are zero.
struct Strip {
  int start = 0; // bundle
  AlignedDoubles rows;
  [[nodiscard]] const double* at(int i) const { // row i of the whole
    return rows.data() + static_cast<std::ptrdiff_t>(width) * (i - lanes * start);
  }
};

// Rows of all strips that stay in the first cache together while every pair of strips is multiplied.
constexpr int slab = 48;

// out (8 x 8, row-major) += a' q over `rows` rows; q is D^-1 times a strip.
void product(const double* a, const double* q, int rows, double* out) {
  for (int half = 0; half < width; half += lanes) {
    Vec acc[lanes][wide];
    double* to = out + static_cast<std::ptrdiff_t>(width) * half;
    for (int r = 0; r < lanes; ++r)
      for (int w = 0; w < wide; ++w) acc[r][w] = vec(to + width * r + lanes * w);
    for (int i = 0; i < rows; ++i) {
      const double* p = a + static_cast<std::ptrdiff_t>(width) * i + half;
      const double* b = q + static_cast<std::ptrdiff_t>(width) * i;
      for (int r = 0; r < lanes; ++r)
        for (int w = 0; w < wide; ++w) acc[r][w] += vec(b + lanes * w) * p[r];
    }
    for (int r = 0; r < lanes; ++r)
      for (int w = 0; w < wide; ++w) vec(to + width * r + lanes * w) = acc[r][w];
  }
}

// W' D^-1 W by pairs of strips (s, t <= s) one after the other, 8 x 8 each, row-major.
AlignedDoubles products(const std::vector<Strip>& strips, const double* inverse_pivot, int n) {
  constexpr int block = width * width;
  AlignedDoubles out(block * strips.size() * (strips.size() + 1) / 2, 0.0);
  alignas(64) double scaled[slab * width];
  for (int first = 0; first < n; first += slab) {
    const int end = std::min(n, first + slab);
    for (std::size_t t = 0; t < strips.size(); ++t) {
      const int from = std::max(first, lanes * strips[t].start);
      if (from >= end) break; // strips are sorted by their start
      for (int i = from; i < end; ++i)
        for (int w = 0; w < width; w += lanes)
          vec(scaled + width * (i - from) + w) = vec(strips[t].at(i) + w) * inverse_pivot[i];
      for (std::size_t s = t; s < strips.size(); ++s) {
        const int begin = std::max(from, lanes * strips[s].start);
        if (begin >= end) break;
        product(strips[s].at(begin), scaled + width * (begin - from), end - begin,
                out.data() + block * (s * (s + 1) / 2 + t));
      }
    }
  }
  return out;
}

} // namespace

Eigen::MatrixXd BandLdlt::compliance(const Eigen::SparseMatrix<double>& b) const {
  const auto k = static_cast<int>(b.cols());
  std::vector<int> leading(k, n_), sorted(k);
  for (int c = 0; c < k; ++c)
    for (Eigen::SparseMatrix<double>::InnerIterator it(b, c); it; ++it)
      if (it.value() != 0) leading[c] = std::min(leading[c], new_index(static_cast<int>(it.row())));
  std::iota(sorted.begin(), sorted.end(), 0);
  std::stable_sort(sorted.begin(), sorted.end(), [&](int p, int q) { return leading[p] < leading[q]; });

  std::vector<Strip> strips((k + width - 1) / width);
  for (std::size_t s = 0; s < strips.size(); ++s) {
    Strip& strip = strips[s];
    const int first = width * static_cast<int>(s), last = std::min(k, first + width);
    strip.start = leading[sorted[first]] / lanes;
    strip.rows.assign(static_cast<std::size_t>(bundles_ - std::min(bundles_, strip.start)) * lanes * width, 0.0);
    double* x = strip.rows.data() - static_cast<std::ptrdiff_t>(width) * lanes * strip.start;
    for (int c = first; c < last; ++c)
      for (Eigen::SparseMatrix<double>::InnerIterator it(b, sorted[c]); it; ++it)
        if (it.value() != 0) x[width * new_index(static_cast<int>(it.row())) + c - first] += it.value();
    forward_block<wide>(x, strip.start);
  }

  const AlignedDoubles blocks = products(strips, inverse_pivot_.data(), n_);
  Eigen::MatrixXd result(k, k);
  const double* block = blocks.data();
  for (std::size_t s = 0; s < strips.size(); ++s)
    for (std::size_t t = 0; t <= s; ++t, block += static_cast<std::ptrdiff_t>(width) * width)
      for (int p = 0; p < width && width * static_cast<int>(s) + p < k; ++p)
        for (int q = 0; q < width && width * static_cast<int>(t) + q < k; ++q) {
          const int i = sorted[width * s + p], j = sorted[width * t + q];
          if (s != t || p >= q) result(i, j) = result(j, i) = block[width * p + q];
        }
  return result;
}

} // namespace bedbow
