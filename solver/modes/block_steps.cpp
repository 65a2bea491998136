#include "solver/modes/block_steps.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <random>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr Index width = 4; // of the block that looks beside what was found

MatrixXd beside(const MatrixXd& a, const MatrixXd& b) {
  MatrixXd both(a.rows(), a.cols() + b.cols());
  both << a, b;
  return both;
}

MatrixXd times(const EigenProblem::Product& product, const MatrixXd& x) {
  MatrixXd y(x.rows(), x.cols());
  product(x, y);
  return y;
}

MatrixXd symmetric(const MatrixXd& a) {
  return (a + a.transpose()) / 2;
}

/// Columns that span what x spans, orthonormal in B.
MatrixXd orthonormal(const EigenProblem& p, const MatrixXd& x) {
  const Eigen::SelfAdjointEigenSolver<MatrixXd> gram(symmetric(x.transpose() * times(p.inner, x)));
  const VectorXd& squares = gram.eigenvalues();
  const double most = squares[squares.size() - 1];
  Index first = 0;
  while (first < squares.size() && (most <= 0 || squares[first] <= 1e-12 * most)) ++first;
  const Index left = squares.size() - first;
  const VectorXd scale = squares.tail(left).cwiseSqrt().cwiseInverse();
  return x * (gram.eigenvectors().rightCols(left) * scale.asDiagonal());
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
  const auto apply = [&](const MatrixXd& x) {
    MatrixXd y = times(p.g, x);
    p.inverse(y);
    operations += static_cast<int>(x.cols());
    const MatrixXd share = b_out.transpose() * y;
    y.noalias() -= out * share;
    return y;
  };
  MatrixXd basis(p.size, 0), b_image(p.size, 0);
  MatrixXd next = apply(random_block(p.size));
  double value = 0;
  for (int step = 0; step < most_steps; ++step) {
    const MatrixXd fresh = orthonormal(p, next);
    if (fresh.cols() == 0) break;
    basis = beside(basis, fresh);
    next = apply(fresh);
    b_image = beside(b_image, times(p.inner, next));
    const MatrixXd t = symmetric(basis.transpose() * b_image);
    const double before = value;
    value = Eigen::SelfAdjointEigenSolver<MatrixXd>(t, Eigen::EigenvaluesOnly).eigenvalues()[basis.cols() - 1];
    // Growth falls from step to step: what is to come is taken for less than twice the last.
    const double to_come = 2 * (value - before);
    if (value > enough || value + to_come < enough || to_come < 2e-3 * value) break;
    next.noalias() -= basis * t.rightCols(fresh.cols());
  }
  return value;
}

void polish(const EigenProblem& p, EigenPairs& pairs) {
  const MatrixXd g = times(p.g, pairs.vectors);
  MatrixXd y = g;
  p.inverse(y);
  pairs.operations += static_cast<int>(y.cols());
  // Y' A Y = Y' G V, since A Y = G V.
  const MatrixXd a = symmetric(y.transpose() * g);
  const MatrixXd b = symmetric(y.transpose() * times(p.g, y));
  const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> ritz(b, a);
  const MatrixXd z = ritz.eigenvectors().rowwise().reverse();
  pairs.values = ritz.eigenvalues().reverse();
  MatrixXd miss = pairs.vectors * z;
  pairs.vectors.noalias() = y * z;
  miss -= pairs.vectors * pairs.values.cwiseInverse().asDiagonal();
  const auto norms = [&](const MatrixXd& x) -> VectorXd {
    return x.cwiseProduct(times(p.inner, x)).colwise().sum().transpose().cwiseMax(0).cwiseSqrt();
  };
  const VectorXd lengths = norms(pairs.vectors);
  pairs.residual = norms(miss).cwiseProduct(pairs.values).cwiseQuotient(lengths).maxCoeff();
  pairs.vectors *= lengths.cwiseInverse().asDiagonal();
}

} // namespace bedbow
