#include "solver/modes/eigen/block_steps.h"

#include "solver/linear/dense.h"

#include <algorithm>
#include <random>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr Index width = 4; // of the block that searches beside the known vectors

MatrixXd times(const EigenProblem::Product& product, const MatrixXd& x) {
  MatrixXd y(x.rows(), x.cols());
  product(x, y);
  return y;
}

MatrixXd symmetric(const MatrixXd& a) {
  return (a + a.transpose()) / 2;
}

/// Columns whose combinations x * columns are orthonormal in B and span what x spans. \param b_x B x.
MatrixXd orthonormal(const MatrixXd& x, const MatrixXd& b_x) {
  const EigenDecomposition gram = symmetric_eigen(symmetric(x.transpose() * b_x));
  const VectorXd& squares = gram.values;
  const double most = squares[squares.size() - 1];
  Index first = 0;
  while (first < squares.size() && (most <= 0 || squares[first] <= 1e-12 * most)) ++first;
  const Index left = squares.size() - first;
  return gram.vectors.rightCols(left) * squares.tail(left).cwiseSqrt().cwiseInverse().asDiagonal();
}

MatrixXd random_block(Index rows) {
  std::minstd_rand random(1);
  std::uniform_real_distribution<double> uniform(-1, 1);
  MatrixXd x(rows, width);
  for (double& v : x.reshaped()) v = uniform(random);
  return x;
}

} // namespace

double largest_beside(const EigenProblem& p, const MatrixXd& out, double enough, int& operations) {
  constexpr int most_steps = 8;
  const MatrixXd b_out = times(p.inner, out);
  MatrixXd next = random_block(p.size), b_next(p.size, width);
  const auto apply = [&](const MatrixXd& g_x) {
    next = g_x;
    p.inverse(next);
    operations += static_cast<int>(next.cols());
    const MatrixXd share = b_out.transpose() * next;
    next.noalias() -= out * share;
    b_next.resize(p.size, next.cols());
    p.inner(next, b_next);
  };
  apply(times(p.g, next));
  // One product with B per step: B times the basis follows from its construction.
  MatrixXd basis(p.size, width * most_steps), b_basis(p.size, width * most_steps);
  MatrixXd t = MatrixXd::Zero(width * most_steps, width * most_steps);
  Index size = 0;
  double value = 0;
  for (int step = 0; step < most_steps; ++step) {
    const MatrixXd columns = orthonormal(next, b_next);
    const Index fresh = columns.cols();
    if (fresh == 0) break;
    basis.middleCols(size, fresh).noalias() = next * columns;
    b_basis.middleCols(size, fresh).noalias() = b_next * columns;
    apply(p.same ? MatrixXd(b_basis.middleCols(size, fresh)) : times(p.g, basis.middleCols(size, fresh)));
    size += fresh;
    const MatrixXd image = basis.leftCols(size).transpose() * b_next;
    t.block(0, size - fresh, size, fresh) = image;
    t.block(size - fresh, 0, fresh, size) = image.transpose();
    const double before = value;
    value = symmetric_eigenvalues(symmetric(t.topLeftCorner(size, size)))[size - 1];
    // The growth decreases from step to step: the remaining growth is assumed to be less than twice the last.
    const double to_come = 2 * (value - before);
    if (value > enough || value + to_come < enough || to_come < 2e-3 * value) break;
    next.noalias() -= basis.leftCols(size) * image;
    b_next.noalias() -= b_basis.leftCols(size) * image;
  }
  return value;
}

void polish(const EigenProblem& p, EigenPairs& pairs) {
  const MatrixXd& v = pairs.vectors;
  const MatrixXd g = times(p.g, v);
  MatrixXd y = g;
  p.inverse(y);
  pairs.operations += static_cast<int>(y.cols());
  const MatrixXd g_y = times(p.g, y);
  // Change in the step, column by column: A^-1 G v - nu v with Rayleigh's quotient nu.
  const auto dots = [](const MatrixXd& a, const MatrixXd& b) -> VectorXd {
    return a.cwiseProduct(b).colwise().sum().transpose();
  };
  const MatrixXd b_v = p.same ? MatrixXd() : times(p.inner, v);
  const VectorXd squares = dots(v, p.same ? g : b_v);
  const VectorXd nu = dots(y, p.same ? g : b_v).cwiseQuotient(squares);
  const MatrixXd miss = y - v * nu.asDiagonal();
  const VectorXd missed = dots(miss, p.same ? MatrixXd(g_y - g * nu.asDiagonal()) : times(p.inner, miss));
  pairs.residual = (missed.cwiseMax(0).cwiseQuotient(squares).cwiseSqrt().cwiseQuotient(nu.cwiseAbs())).maxCoeff();
  // Y' A Y = Y' G V, since A Y = G V.
  const MatrixXd a = symmetric(y.transpose() * g);
  const MatrixXd b = symmetric(y.transpose() * g_y);
  const EigenDecomposition ritz = generalized_eigen(b, a);
  pairs.values = ritz.values.reverse();
  MatrixXd z = ritz.vectors.rowwise().reverse();
  if (p.same) z *= pairs.values.cwiseSqrt().cwiseInverse().asDiagonal(); // Z' B Z = nu, Z' A Z = I
  pairs.vectors = y * z;
  if (p.same) return;
  // Z' A Z = I only as far as A Y = G V, which rounding in A^-1 disturbs: lengths need a separate product.
  const VectorXd lengths = dots(pairs.vectors, times(p.inner, pairs.vectors)).cwiseSqrt();
  pairs.vectors *= lengths.cwiseInverse().asDiagonal();
}

} // namespace bedbow
