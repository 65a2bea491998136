#include "solver/modes/eigen/eigenpairs.h"

#include "solver/modes/eigen/block_steps.h"
#include "solver/modes/eigen/eigenpairs_dense.h"
#include "solver/modes/eigen/lanczos.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr Index small = 80; // below, dense is faster than Lanczos and finds every multiplicity

MatrixXd beside(const MatrixXd& a, const MatrixXd& b) {
  MatrixXd both(a.rows(), a.cols() + b.cols());
  both << a, b;
  return both;
}

/// Adds the found pairs to `all`, keeping the largest `count`.
void merge(EigenPairs& all, const EigenPairs& more, Index count) {
  VectorXd values(all.values.size() + more.values.size());
  values << all.values, more.values;
  const MatrixXd vectors = beside(all.vectors, more.vectors);
  std::vector<Index> order(static_cast<std::size_t>(values.size()));
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<Index>(i);
  std::stable_sort(order.begin(), order.end(), [&](Index a, Index b) { return values[a] > values[b]; });
  order.resize(std::min<std::size_t>(order.size(), static_cast<std::size_t>(count)));
  all.values = values(order);
  all.vectors = vectors(Eigen::all, order);
}

/// Lanczos from one starting vector finds a repeated value only once, except for rounding: search again beside the
/// known vectors.
EigenPairs search_all(const EigenProblem& p, Index wanted, const MatrixXd& known) {
  constexpr Index spare =
      2; // so that there is a gap between the wanted values and those that the last search must exclude
  const Index most = p.size - known.cols() - 1;
  const auto search = [&](Index values) {
    values = std::min(values, most);
    return Search{values, std::min(p.size, std::max(2 * values + 1, values + 10)), 60, 1e-8};
  };
  EigenPairs all = lanczos(p, known, search(wanted + spare));
  for (int round = 0; round < 1000; ++round) {
    const MatrixXd out = beside(known, all.vectors);
    if (p.size - out.cols() < 12) break;
    const double last = all.values.size() < wanted ? p.nothing * all.scale : all.values[wanted - 1] * (1 + 1e-7);
    if (largest_beside(p, out, last, all.operations) <= last) break;
    const EigenPairs probe = lanczos(p, out, search(std::min<Index>(wanted, 4)));
    all.operations += probe.operations;
    if (probe.values.size() == 0 || probe.values[0] <= last) break;
    merge(all, probe, wanted + spare);
  }
  return all;
}

void check_orthogonality(const EigenProblem& p, EigenPairs& pairs) {
  MatrixXd b(p.size, pairs.vectors.cols());
  p.inner(pairs.vectors, b);
  const MatrixXd gram = pairs.vectors.transpose() * b - MatrixXd::Identity(b.cols(), b.cols());
  pairs.orthogonality = gram.size() ? gram.cwiseAbs().maxCoeff() : 0;
}

} // namespace

double greatest_value(const EigenProblem& p) {
  constexpr int steps = 10;
  MatrixXd x(p.size, 1), y(p.size, 1), product(p.size, 1);
  for (Index i = 0; i < p.size; ++i)
    x(i, 0) = std::sin(1.0 + 12.9898 * static_cast<double>(i)); // contains a part of every shape
  p.inverse(x);                                                 // into the range of the inverse
  const auto length = [&](const MatrixXd& v) {
    p.inner(v, product);
    return std::sqrt(std::max(0.0, v.cwiseProduct(product).sum()));
  };
  double most = 0;
  double before = length(x);
  for (int i = 0; i < steps && before > 0; ++i) {
    x /= before;
    p.g(x, y);
    p.inverse(y);
    before = length(y);
    most = std::max(most, before);
    x = y;
  }
  return most;
}

EigenPairs largest_pairs(const EigenProblem& p, int wanted, const MatrixXd& known) {
  EigenPairs pairs;
  pairs.vectors.resize(p.size, 0);
  if (wanted <= 0 || p.size == 0) return pairs;
  pairs = p.size <= std::max<Index>(small, known.cols() + 3 * wanted) ? all_pairs_dense(p, known)
                                                                      : search_all(p, wanted, known);
  // Only positive values are wanted; the rest of the spectrum is discarded.
  Index count = 0;
  while (count < pairs.values.size() && pairs.values[count] > p.nothing * pairs.scale) ++count;
  if (count == 0) return {VectorXd(0), MatrixXd(p.size, 0), 0, 0, pairs.scale, pairs.operations};
  pairs.vectors.conservativeResize(Eigen::NoChange, count);
  polish(p, pairs);
  count = std::min<Index>(count, wanted);
  pairs.values.conservativeResize(count);
  pairs.vectors.conservativeResize(Eigen::NoChange, count);
  check_orthogonality(p, pairs);
  return pairs;
}

} // namespace bedbow
