/// \file
/// Matrices that the tests of the linear solvers share.
#pragma once

#include "solver/linear/factorization.h"

#include <Eigen/Dense>

#include <random>
#include <vector>

namespace bedbow::test {

inline SymmetricMatrix lower_of(const Eigen::MatrixXd& dense) {
  SymmetricMatrix a = dense.triangularView<Eigen::Lower>().toDenseMatrix().sparseView();
  a.makeCompressed();
  return a;
}

inline Eigen::MatrixXd full(const SymmetricMatrix& lower) {
  return Eigen::MatrixXd(lower).selfadjointView<Eigen::Lower>();
}

/// Random symmetric matrix within a half-bandwidth; `shift` on the diagonal makes it definite.
inline SymmetricMatrix random_band(int n, int half_band, double shift, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> u(-1, 1);
  std::vector<Eigen::Triplet<double>> t;
  for (int j = 0; j < n; ++j) {
    t.emplace_back(j, j, shift + u(random));
    for (int i = j + 1; i < n && i <= j + half_band; ++i) t.emplace_back(i, j, u(random));
  }
  SymmetricMatrix a(n, n);
  a.setFromTriplets(t.begin(), t.end());
  return a;
}

/// Stiffness of an Euler-Bernoulli beam in a row of elements of length l, dofs (w, theta) per node, EI = 1; the usual
/// cubic element. No support: two rigid movements.
inline Eigen::MatrixXd free_beam(int elements, double l) {
  Eigen::Matrix4d k;
  k << 12, 6 * l, -12, 6 * l, 6 * l, 4 * l * l, -6 * l, 2 * l * l, -12, -6 * l, 12, -6 * l, 6 * l, 2 * l * l, -6 * l,
      4 * l * l;
  k /= l * l * l;
  Eigen::MatrixXd a = Eigen::MatrixXd::Zero(2 * (elements + 1), 2 * (elements + 1));
  for (int e = 0; e < elements; ++e) a.block<4, 4>(2 * e, 2 * e) += k;
  return a;
}

/// Springs between neighbours of a grid of `across` x `along` nodes with `block` unknowns each, coupled within a node;
/// every node on its own small spring of stiffness `ground`. Pattern of a plate of four-node elements.
inline SymmetricMatrix grid(int along, int across, int block, double ground) {
  const Eigen::MatrixXd coupling =
      Eigen::MatrixXd::Identity(block, block) * 2 + Eigen::MatrixXd::Ones(block, block) * 0.3;
  std::vector<Eigen::Triplet<double>> t;
  const auto spring = [&](int a, int b, double stiffness) {
    for (int r = 0; r < block; ++r)
      for (int c = 0; c < block; ++c) {
        const double k = stiffness * coupling(r, c);
        if (r >= c) {
          t.emplace_back(block * a + r, block * a + c, k);
          t.emplace_back(block * b + r, block * b + c, k);
        }
        t.emplace_back(block * std::max(a, b) + r, block * std::min(a, b) + c, -k);
      }
  };
  for (int x = 0; x < along; ++x)
    for (int y = 0; y < across; ++y) {
      const int i = x * across + y;
      for (int r = 0; r < block; ++r) t.emplace_back(block * i + r, block * i + r, ground);
      if (y + 1 < across) spring(i, i + 1, 1.0);
      if (x + 1 < along) spring(i, i + across, 1.1);
      if (x + 1 < along && y + 1 < across) spring(i, i + across + 1, 0.4);
      if (x + 1 < along && y > 0) spring(i, i + across - 1, 0.3);
    }
  SymmetricMatrix a(along * across * block, along * across * block);
  a.setFromTriplets(t.begin(), t.end());
  return a;
}

} // namespace bedbow::test
