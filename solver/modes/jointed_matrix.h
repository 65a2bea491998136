/// \file
/// The whole machine as one symmetric matrix that is never assembled: the matrices of its parts, factored one by one,
/// plus the rows of its joints, as springs or as rigid constraints. Theory: docs/theory/modes.md.
#pragma once

#include "solver/assembly/joint_springs.h"
#include "solver/linear/factorization.h"
#include "solver/modes/free_map.h"

#include <Eigen/LU>
#include <Eigen/SparseCore>

#include <memory>
#include <vector>

namespace bedbow {

/// The rows of joints on all unknowns.
struct JointRows {
  Eigen::SparseMatrix<double, Eigen::RowMajor> elongation; ///< rows x unknowns
  Eigen::VectorXd compliance; ///< by row [m/N], 0: rigid, negative: removes a spring's stiffness
};

/// Rows on the unknowns of a free map. Rows without unknowns are omitted.
JointRows joint_rows(const Mesh& mesh, const FreeMap& free, const std::vector<JointSpring>& rows, double angle);

/// A = parts + rows' C^-1 rows, where rigid rows are constraints rows x = 0 instead.
class JointedMatrix {
public:
  /// Factors the parts and condenses the rows. \param hints by part. Throws std::runtime_error naming the part (by
  /// number) where a factorization fails.
  JointedMatrix(std::vector<SymmetricMatrix> parts, JointRows rows, const FactorFunction& factor,
                const std::vector<FactorHints>& hints);

  /// The same from existing factors of the parts. \param factors by part; null where a part has no unknowns.
  JointedMatrix(std::vector<SymmetricMatrix> parts, JointRows rows,
                std::vector<std::shared_ptr<const Factorization>> factors);

  [[nodiscard]] Eigen::Index size() const { return start_.back(); }
  /// X = A^-1 B in place, columns at once. Satisfies the constraints.
  void solve(Eigen::Ref<Eigen::MatrixXd> b) const;
  /// y = A x, without constraint forces. \param x must satisfy the constraints.
  void multiply(const Eigen::Ref<const Eigen::VectorXd>& x, Eigen::Ref<Eigen::VectorXd> y) const;
  /// Number of negative eigenvalues of A on the constrained displacements (Sturm): those of the parts less those of the
  /// condensed rows. Throws std::logic_error where the parts' solver can't count them.
  [[nodiscard]] int negative_eigenvalues() const;
  [[nodiscard]] std::size_t bytes() const;

private:
  void condense();

  std::vector<SymmetricMatrix> parts_;
  std::vector<Eigen::Index> start_; // by part, and the end
  std::vector<std::shared_ptr<const Factorization>> factors_;
  JointRows rows_;
  std::vector<std::vector<Eigen::Index>> rows_of_; // by part: the rows that reach it
  std::vector<Eigen::MatrixXd> responses_;         // by part: its A^-1 times those rows
  Eigen::VectorXd scale_;                          // of the rows, so that forces and couples have equal weight
  Eigen::MatrixXd condensed_;                      // rows A^-1 rows' + C, scaled
  Eigen::PartialPivLU<Eigen::MatrixXd> lu_;
};

} // namespace bedbow
