// The one file that includes Spectra: it takes longer to compile than any other.
#include "solver/modes/eigenpairs.h"

#include "solver/modes/block_steps.h"
#include "solver/modes/eigenpairs_dense.h"

#include <Eigen/Eigenvalues>
#include <Spectra/SymEigsBase.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

namespace bedbow {

namespace {

using Eigen::Index;
using Eigen::Map;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr Index small = 80; // below, dense is quicker than Lanczos and sees every multiplicity

/// B x. Lanczos asks several times in a row for the same vector: the last answer is kept.
class InnerProduct {
public:
  explicit InnerProduct(const EigenProblem& p)
      : p_(p)
      , in_(VectorXd::Constant(p.size, std::numeric_limits<double>::quiet_NaN()))
      , out_(p.size) {}
  void perform_op(const double* x, double* y) const {
    const auto bytes = static_cast<std::size_t>(p_.size) * sizeof(double);
    if (std::memcmp(x, in_.data(), bytes) != 0) {
      std::memcpy(in_.data(), x, bytes);
      p_.inner(in_, out_);
    }
    std::memcpy(y, out_.data(), bytes);
  }
  /// B x where x is, but for a factor and rounding, what was asked for last. \return whether it is.
  bool again(const Map<const VectorXd>& x, VectorXd& y) const {
    Index largest = 0;
    if (!(in_.cwiseAbs().maxCoeff(&largest) > 0)) return false;
    const double factor = x[largest] / in_[largest];
    constexpr double rounding = 8 * std::numeric_limits<double>::epsilon();
    if (!((x - factor * in_).cwiseAbs().array() <= rounding * x.cwiseAbs().array()).all()) return false;
    y = factor * out_;
    return true;
  }

private:
  const EigenProblem& p_;
  mutable VectorXd in_, out_;
};

/// y = A^-1 G x without its share along given vectors.
class Deflated {
public:
  using Scalar = double;
  Deflated(const EigenProblem& p, const InnerProduct& inner, const MatrixXd& out)
      : p_(p)
      , inner_(inner)
      , out_(out)
      , weighted_(out.rows(), out.cols())
      , cache_(p.size) {
    p.inner(out, weighted_);
  }
  [[nodiscard]] Index rows() const { return p_.size; }
  void perform_op(const double* x, double* y) const {
    const Map<const VectorXd> in(x, p_.size);
    if (!p_.same || !inner_.again(in, cache_)) p_.g(in, cache_); // Lanczos has just asked for the vector's length
    p_.inverse(cache_);
    if (out_.cols() > 0) cache_ -= out_ * (weighted_.transpose() * cache_).eval();
    Map<VectorXd>(y, p_.size) = cache_;
  }

private:
  const EigenProblem& p_;
  const InnerProduct& inner_;
  const MatrixXd& out_;
  MatrixXd weighted_;
  mutable VectorXd cache_;
};

/// Spectra's solvers differ only in the operator that they wrap; ours is made, so their common base will do.
class Lanczos : public Spectra::SymEigsBase<Deflated, InnerProduct> {
public:
  using SymEigsBase::SymEigsBase;
  /// Greatest |nu| seen.
  [[nodiscard]] double scale() const { return scale_; }
  /// Largest value that has not converged; -infinity when all have.
  [[nodiscard]] double open_value() const {
    const VectorXd done = eigenvalues();
    for (Eigen::Index i = 0, j = 0; i < m_nev; ++i) {
      if (j == done.size() || done[j] != m_ritz_val[i]) return m_ritz_val[i];
      ++j;
    }
    return -std::numeric_limits<double>::infinity();
  }

private:
  void sort_ritzpair(Spectra::SortRule rule) override {
    scale_ = m_ritz_val.cwiseAbs().maxCoeff();
    SymEigsBase::sort_ritzpair(rule);
  }
  double scale_ = 0;
};

struct Search {
  Index values = 0, basis = 0;
  Index restarts = 0;
  double tolerance = 0;
};

/// Converged pairs of one run, largest first.
EigenPairs run(const EigenProblem& p, const MatrixXd& out, const Search& search) {
  const InnerProduct inner(p);
  Deflated op(p, inner, out);
  Lanczos lanczos(op, inner, search.values, search.basis);
  lanczos.init();
  lanczos.compute(Spectra::SortRule::LargestAlge, search.restarts, search.tolerance);
  EigenPairs pairs;
  pairs.values = lanczos.eigenvalues();
  pairs.vectors = lanczos.eigenvectors();
  pairs.operations = static_cast<int>(lanczos.num_operations());
  // What is left may be the crowd at zero, which never converges and is no answer.
  pairs.scale = lanczos.scale();
  if (lanczos.open_value() > p.nothing * pairs.scale)
    throw std::runtime_error("the eigenvalue search did not converge: " + std::to_string(pairs.values.size()) + " of " +
                             std::to_string(search.values) + " values found");
  return pairs;
}

MatrixXd beside(const MatrixXd& a, const MatrixXd& b) {
  MatrixXd both(a.rows(), a.cols() + b.cols());
  both << a, b;
  return both;
}

/// Adds what was found to `all`, keeping the largest `count`.
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

/// Lanczos started from one vector sees a repeated value once, but for rounding: look again beside what was found.
EigenPairs search_all(const EigenProblem& p, Index wanted, const MatrixXd& known) {
  constexpr Index spare = 2; // so that a gap lies between what is wanted and what the last look has to exclude
  const Index most = p.size - known.cols() - 1;
  const auto search = [&](Index values) {
    values = std::min(values, most);
    return Search{values, std::min(p.size, std::max(2 * values + 1, values + 10)), 60, 1e-8};
  };
  EigenPairs all = run(p, known, search(wanted + spare));
  for (int round = 0; round < 1000; ++round) {
    const MatrixXd out = beside(known, all.vectors);
    if (p.size - out.cols() < 12) break;
    const double last = all.values.size() < wanted ? p.nothing * all.scale : all.values[wanted - 1] * (1 + 1e-7);
    if (largest_beside(p, out, last, all.operations) <= last) break;
    const EigenPairs probe = run(p, out, search(std::min<Index>(wanted, 4)));
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

EigenPairs largest_pairs(const EigenProblem& p, int wanted, const MatrixXd& known) {
  EigenPairs pairs;
  pairs.vectors.resize(p.size, 0);
  if (wanted <= 0 || p.size == 0) return pairs;
  pairs = p.size <= std::max<Index>(small, known.cols() + 3 * wanted) ? all_pairs_dense(p, known)
                                                                      : search_all(p, wanted, known);
  // Only positive values are an answer; the rest of the spectrum is what nobody asked for.
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
