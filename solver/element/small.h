/// \file
/// Cholesky factors of small dense matrices as plain arrays, for element matrices: no allocation, quick to compile.
#pragma once

#include <cmath>
#include <stdexcept>

namespace bedbow::small {

/// A = L L' in place, lower triangle. Throws std::invalid_argument when A is not positive definite.
template <int N> void cholesky(double (&a)[N][N]) {
  for (int j = 0; j < N; ++j) {
    double d = a[j][j];
    for (int k = 0; k < j; ++k) d -= a[j][k] * a[j][k];
    if (!(d > 0)) throw std::invalid_argument("element too distorted: its stiffness has no positive pivot");
    const double l = std::sqrt(d);
    a[j][j] = l;
    for (int i = j + 1; i < N; ++i) {
      double s = a[i][j];
      for (int k = 0; k < j; ++k) s -= a[i][k] * a[j][k];
      a[i][j] = s / l;
    }
  }
}

/// B := L^-1 B.
template <int N, int M> void forward(const double (&l)[N][N], double (&b)[N][M]) {
  for (int i = 0; i < N; ++i) {
    for (int k = 0; k < i; ++k)
      for (int j = 0; j < M; ++j) b[i][j] -= l[i][k] * b[k][j];
    for (int j = 0; j < M; ++j) b[i][j] /= l[i][i];
  }
}

/// b := L'^-1 b.
template <int N> void backward(const double (&l)[N][N], double (&b)[N]) {
  for (int i = N - 1; i >= 0; --i) {
    for (int k = i + 1; k < N; ++k) b[i] -= l[k][i] * b[k];
    b[i] /= l[i][i];
  }
}

} // namespace bedbow::small
