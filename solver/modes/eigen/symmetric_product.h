/// \file
/// Products of a symmetric sparse matrix with one vector or several.
#pragma once

#include "solver/linear/factorization.h"
#include "solver/linear/vec.h"

#include <vector>

namespace bedbow {

/// Both triangles, without the zeros of the pattern, in slices of four rows of one length (sliced ELLPACK, Monakov et
/// al. 2010, from memory): rows of a mass matrix are so short that separate loops would cost more than the
/// arithmetic. Four columns at once take little longer than one.
class SymmetricProduct {
public:
  explicit SymmetricProduct(const SymmetricMatrix& lower);
  [[nodiscard]] Eigen::Index size() const { return size_; }
  /// Y = A X. \param x, y size x any, not the same memory.
  void multiply(const Eigen::Ref<const Eigen::MatrixXd>& x, Eigen::Ref<Eigen::MatrixXd> y) const;

private:
  void one(const double* x, double* y) const;
  void four(const double* x, double* y) const;

  Eigen::Index size_;
  std::vector<Eigen::Index> start_; // of each slice, in entries of four rows, and the end
  std::vector<int> column_;         // four to an entry
  linear::AlignedDoubles value_;
};

} // namespace bedbow
