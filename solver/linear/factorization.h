/// \file
/// Sparse symmetric factorization behind one small interface, so that solvers are interchangeable.
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>

#include <functional>
#include <memory>
#include <string>

namespace bedbow {

/// Symmetric matrix as its lower triangle, compressed by columns, row indices ascending.
using SymmetricMatrix = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;

/// A = L D L' of one matrix, ready to solve. Const calls may run in several threads at once.
class Factorization {
public:
  virtual ~Factorization() = default;
  /// Order of the matrix.
  [[nodiscard]] virtual int size() const = 0;
  /// Solves A X = B in place. \param b size x k, column-major, any k >= 0.
  virtual void solve(Eigen::Ref<Eigen::MatrixXd> b) const = 0;
  /// Number of negative pivots: eigenvalues below zero (Sturm). Throws std::logic_error where the method can't
  /// determine it.
  [[nodiscard]] virtual int negative_pivots() const = 0;
  /// Bytes held by the factor.
  [[nodiscard]] virtual std::size_t bytes() const = 0;
  /// Compliance seen by the columns of B. \param b size x k, sparse. \return B' A^-1 B, k x k, exactly symmetric.
  /// Solvers may compute half of it only (W = L^-1 B, then W' D^-1 W) and skip the leading zeros of each column.
  [[nodiscard]] virtual Eigen::MatrixXd compliance(const Eigen::SparseMatrix<double>& b) const;
};

/// Known properties of the matrix. All optional.
struct FactorHints {
  int block = 1;             ///< consecutive unknowns that share one sparsity pattern (6 for full nodes)
  bool positive = true;      ///< expected positive definite; false: pivots of either sign are fine
  bool banded_order = false; ///< unknowns are already numbered station by station: a band solver may keep this order
  int threads = 0;           ///< 0: all cores
};

/// A factorization, or the first unknown that has no stiffness left.
struct FactorOutcome {
  std::unique_ptr<Factorization> factorization; ///< null when failed
  int zero_pivot = -1;                          ///< unknown (in the matrix's own numbering) where it broke down
  Eigen::VectorXd mechanism;                    ///< when failed: the mechanism, largest entry 1; empty if unknown
};

using FactorFunction = std::function<FactorOutcome(const SymmetricMatrix& lower, const FactorHints& hints)>;

struct LinearSolverEntry {
  std::string name, description, source;
  FactorFunction factor;
  std::string origin = "built in";
};

} // namespace bedbow
